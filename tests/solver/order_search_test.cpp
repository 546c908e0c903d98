#include "bench/order_search.hpp"

#include "tackfree/solver/serial.hpp"

#include "bench/check.hpp"
#include "effort.hpp"
#include "solver/agreement.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

/// Random problems with two workers, lags across and every other rule, but no set-up or clean-up.
SchedulingProblem general_problem(unsigned seed) {
  SchedulingProblem p = testing::problem_with_every_rule(seed, 15, 2, true);
  for (Product& product : p.products) product = {0, 0};
  return p;
}

TEST_CASE(
    "on tiny problems of every rule the orders hold the brute-force optimum, or none is left") {
  int compared = 0, infeasible = 0;
  for (unsigned seed = 0; compared < tackfree::testing::cases(600); ++seed) {
    const SchedulingProblem p = general_problem(seed);
    if (p.activities.size() > 6) continue;
    const auto found = best_by_order(p, serial_schedule(p), 2'000'000);
    REQUIRE(found);
    CAPTURE(seed);
    ++compared;
    if (testing::check_agreement(p, *found, false) == testing::Agreed::no_schedule) ++infeasible;
  }
  CHECK(infeasible > tackfree::testing::cases(30));
  CHECK(infeasible < tackfree::testing::cases(500));
}

TEST_CASE("both searches prove the same where both apply") {
  int compared = 0;
  for (unsigned seed = 0; seed < tackfree::testing::cases(200U); ++seed) {
    SchedulingProblem p = testing::problem_with_every_rule(seed, 40, 2, false);
    for (Product& product : p.products) product = {0, 0};
    const Solution known = serial_schedule(p);
    const auto by_window = best_schedule(p, known, 100'000);
    const auto by_order = best_by_order(p, known, 400'000);
    if (!by_window || !by_order) continue;
    CAPTURE(seed);
    if (by_window->ready_proved && by_order->ready_proved) {
      ++compared;
      CHECK(worth(p, by_window->solution).ready == worth(p, by_order->solution).ready);
    }
    CHECK_FALSE((by_window->infeasible && by_order->ready_proved));
    CHECK_FALSE((by_order->infeasible && by_window->ready_proved));
  }
  CHECK(compared > tackfree::testing::cases(60));
}

TEST_CASE("set-up and clean-up are left to the other search") {
  SchedulingProblem p = general_problem(1);
  p.products[0].set_up = 1;
  CHECK_FALSE(best_by_order(p, serial_schedule(p), 1000));
}

TEST_CASE("what takes more than there is can have no schedule") {
  SchedulingProblem p;
  p.horizon = 10;
  p.windows = {{0, 10}};
  p.open_times = {OpenTime(std::vector<Rule>(10, no_rule))};
  p.tables = {LagTable{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}};
  p.resources = {2};
  p.activities = {{.duration = 2, .uses = {{0, 3, std::nullopt}}}};
  p.goals = {{0, 0}};
  const auto found = best_by_order(p, serial_schedule(p), 1000);
  REQUIRE(found);
  CHECK(found->infeasible);
}

}  // namespace
}  // namespace tackfree::solver
