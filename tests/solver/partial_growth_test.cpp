#include "tackfree/solver/partial_growth.hpp"

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

/// Two windows; a coat alone and a pair of work and coat, of one product, with space for one coat.
SchedulingProblem two_coats() {
  SchedulingProblem p;
  p.horizon = 40;
  p.windows = {{2, 14}, {20, 30}};
  std::vector<Rule> start(40, Rule{1});
  for (const Run w : p.windows)
    for (Slot s = w.begin; s + 2 <= w.end; ++s) start[static_cast<std::size_t>(s)] = no_rule;
  p.open_times = {OpenTime(start)};
  p.tables = {testing::waiting_table(40, 3)};
  p.products = {{1, 1}};
  p.resources = {1};
  const Activity coat{
      .duration = 2, .wet_until = 0, .product = 0, .uses = {{0, 1, std::size_t{0}}}};
  p.activities = {coat, {.duration = 2, .dusty = true}, coat};
  p.lags = {{.from = 1, .to = 2}};
  p.maximum_lags = {{.from = 1, .to = 2, .delay = 6}};
  return p;
}

TEST_CASE("a coat waits for its set-up, for the space of another and for dust") {
  const SchedulingProblem p = two_coats();
  const auto chains = chains_of(p);
  REQUIRE(chains);
  const PartialGrowth growth(p, *chains, false, true);
  const PartialSchedule begin;
  CHECK(growth.first_start(begin, 0, 0, 0) == 3);
  CHECK(growth.first_start(begin, 1, 0, 0) == 2);
  const PartialSchedule coated = growth.add(begin, 0, 3, 0).partial;
  CHECK(coated.free == 5);
  CHECK(coated.due == 0);
  CHECK(coated.cost.sessions == 1);
  CHECK(growth.first_start(coated, 1, 5, 0) == p.tables[0][5]);  // wet until then
  const PartialSchedule sanded = growth.add(begin, 1, 2, 0).partial;
  CHECK(sanded.latest[1][0] == 10);
  CHECK(growth.first_start(growth.add(sanded, 0, 5, 0).partial, 1, 7, 0) == p.tables[0][7]);
}

TEST_CASE("a loose limit counts from the last start in the window") {
  const SchedulingProblem p = two_coats();
  const auto chains = chains_of(p);
  const PartialGrowth growth(p, *chains, true, false);
  CHECK(growth.add(PartialSchedule{}, 1, 2, 0).partial.latest[1][0] == 12 + 2 + 6);
}

TEST_CASE("closing a window cleans up, forgets what is over and waits for the next one") {
  const SchedulingProblem p = two_coats();
  const auto chains = chains_of(p);
  const PartialGrowth growth(p, *chains, false, true);
  const PartialSchedule closed = growth.close(growth.add(PartialSchedule{}, 0, 3, 0).partial, 0);
  CHECK(closed.due == no_product);
  CHECK(closed.open == 0);
  CHECK(closed.free == 20);
  CHECK(closed.wet_until[0] == 0);
  CHECK(closed.held[0][0].until == 0);
}

TEST_CASE("work that leaves no trace is harmless; a coat whose session costs, or a limit, is not") {
  const SchedulingProblem p = two_coats();
  const auto chains = chains_of(p);
  const PartialSchedule begin;
  const PartialGrowth counting(p, *chains, false, true);
  const PartialGrowth free_of_cost(p, *chains, false, false);
  CHECK_FALSE(counting.is_harmless(begin, counting.add(begin, 0, 3, 0), 0, 0));
  // Another coat of its product is to come, and would have to set up for itself.
  CHECK_FALSE(free_of_cost.is_harmless(begin, free_of_cost.add(begin, 0, 3, 0), 0, 0));
  SchedulingProblem lone = p;
  lone.products.push_back({1, 1});
  lone.activities[2].product = 1;
  const auto lone_chains = chains_of(lone);
  const PartialGrowth last_of_it(lone, *lone_chains, false, false);
  CHECK(last_of_it.is_harmless(begin, last_of_it.add(begin, 0, 3, 0), 0, 0));
  CHECK_FALSE(free_of_cost.is_harmless(begin, free_of_cost.add(begin, 1, 2, 0), 1, 0));
  SchedulingProblem slow = p;  // the space is taken into the next window, the rest is over
  slow.tables.push_back(testing::waiting_table(40, 20));
  slow.activities[0].uses[0].held_until = 1;
  const auto slow_chains = chains_of(slow);
  const PartialGrowth held(slow, *slow_chains, false, false);
  CHECK_FALSE(held.is_harmless(begin, held.add(begin, 0, 3, 0), 0, 0));
}

}  // namespace
}  // namespace tackfree::solver
