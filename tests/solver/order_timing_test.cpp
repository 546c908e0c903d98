#include "bench/order_timing.hpp"

#include <algorithm>
#include <numeric>

#include "bench/check.hpp"
#include "bench/list_decoder.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

SchedulingProblem open_day() {
  SchedulingProblem p;
  p.horizon = 30;
  p.windows = {{0, 30}};
  p.open_times = {OpenTime(std::vector<Rule>(30, no_rule))};
  p.tables = {testing::waiting_table(30, 4)};
  return p;
}

TEST_CASE("a maximum lag pulls the earlier start after the later one") {
  SchedulingProblem p = open_day();
  p.activities = {{.duration = 2}, {.duration = 5}, {.duration = 1}};
  p.lags = {{.from = 0, .to = 2}};
  p.maximum_lags = {{.from = 0, .to = 2, .delay = 1}};
  const OrderTiming timing(p);
  std::vector<Slot> starts(3, 0);
  // In this order 2 starts after the five slots of 1, so 0 cannot start before 4; 1 follows it.
  const std::vector<Slot> latest(3, 30);
  CHECK_FALSE(timing.raise({0, 1, 2}, latest, starts));
  starts.assign(3, 0);
  REQUIRE(timing.raise({1, 0, 2}, latest, starts));
  CHECK(starts == std::vector<Slot>{5, 0, 7});
}

TEST_CASE("latest starts go back from the target through lags, and from a limit to what it binds") {
  SchedulingProblem p = open_day();
  p.activities = {{.duration = 2}, {.duration = 3}};
  p.lags = {{.from = 0, .to = 1, .table = 0}};
  p.goals = {{1, 0}};
  const OrderTiming timing(p);
  std::vector<Slot> latest(2, 30);
  timing.lower(20, latest);
  // In the cold from 7 to 15 the wait is 7: ready by 20 is ended by 13; then again from 10.
  CHECK(latest[1] == 10);
  CHECK(p.tables[0][6] == 10);
  CHECK(latest[0] == 4);
}

TEST_CASE("no schedule that keeps an order has any start before the ones found for it") {
  int compared = 0;
  for (unsigned seed = 0; seed < 1500; ++seed) {
    SchedulingProblem p = testing::problem_with_every_rule(seed, 30, 3, true);
    for (Product& product : p.products) product = {0, 0};
    ListDecoder decoder(p);
    std::vector<std::size_t> list(p.activities.size());
    std::iota(list.begin(), list.end(), std::size_t{0});
    const auto timed = decoder.decode(list, 5);
    if (!timed) continue;
    std::stable_sort(list.begin(), list.end(), [&](std::size_t a, std::size_t b) {
      return timed->starts[a] < timed->starts[b];
    });
    const OrderTiming timing(p);
    std::vector<Slot> starts(p.activities.size(), 0);
    CAPTURE(seed);
    REQUIRE(timing.raise(list, std::vector<Slot>(list.size(), p.horizon), starts));
    for (std::size_t i = 0; i < starts.size(); ++i) CHECK(starts[i] <= timed->starts[i]);
    for (const std::string& broken : violations(p, solution_from(p, starts))) FAIL_CHECK(broken);
    ++compared;
  }
  CHECK(compared > 400);
}

}  // namespace
}  // namespace tackfree::solver
