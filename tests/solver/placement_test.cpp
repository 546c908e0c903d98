#include "tackfree/solver/placement.hpp"

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

SchedulingProblem open_day(Slot length) {
  SchedulingProblem p;
  p.horizon = length;
  p.windows = {{0, length}};
  p.open_times = {OpenTime(std::vector<Rule>(static_cast<std::size_t>(length), no_rule))};
  return p;
}

TEST_CASE("an activity is eligible once all before it are placed or given up") {
  SchedulingProblem p = open_day(10);
  p.tables = {LagTable(11, never)};
  p.activities = {{.duration = 2}, {.duration = 2}, {.duration = 2}};
  p.lags = {{.from = 0, .to = 1, .table = 0}, {.from = 1, .to = 2}};
  Placement placement(p);
  CHECK(placement.is_eligible(0));
  CHECK_FALSE(placement.is_eligible(1));
  placement.place(0, placement.earliest(0));
  CHECK_FALSE(placement.is_eligible(0));
  REQUIRE(placement.is_eligible(1));
  placement.place(1, placement.earliest(1));  // never: given up
  CHECK(placement.is_eligible(2));
  CHECK_FALSE(placement.earliest(2).placed());
}

TEST_CASE("looking for a place does not take it") {
  SchedulingProblem p = open_day(10);
  p.activities = {{.duration = 4}, {.duration = 4}};
  Placement placement(p);
  CHECK(placement.earliest(1).begin() == 0);
  CHECK(placement.earliest(1).begin() == 0);
  placement.place(0, placement.earliest(0));
  CHECK(placement.earliest(1).begin() == 4);
  CHECK(placement.earliest(1).holds.back().by == Hold::By::worker);
}

TEST_CASE("a gap before placed work is used when it is long enough") {
  SchedulingProblem p = open_day(12);
  p.activities = {{.duration = 2}, {.duration = 3}, {.duration = 4}};
  p.lags = {{.from = 0, .to = 1, .delay = 3}};
  Placement placement(p);
  placement.place(0, placement.earliest(0));
  placement.place(1, placement.earliest(1));  // 5 to 8
  CHECK(placement.earliest(2).begin() == 8);
  p.activities[2].duration = 3;
  CHECK(placement.earliest(2).begin() == 2);
}

/// Two coats of a product whose tool must be cleaned in pauses of more than three slots, and other
/// work of five; the second coat waits for eight slots.
SchedulingProblem cleaned_in_pauses() {
  SchedulingProblem p = open_day(40);
  p.products = {{.set_up = 1, .clean_up = 2, .uncleaned = 3}};
  p.activities = {{.duration = 2, .product = 0}, {.duration = 2, .product = 0}, {.duration = 5}};
  p.lags = {{.from = 0, .to = 1, .delay = 8}};
  return p;
}

TEST_CASE("a tool that cannot lie through a pause is cleaned before other work is begun") {
  const SchedulingProblem p = cleaned_in_pauses();
  Placement placement(p);
  for (const std::size_t coat : {0U, 1U}) placement.place(coat, placement.earliest(coat));
  REQUIRE(placement.solution().activities[0].end() == 3);
  CHECK(placement.solution().activities[1].begin() == 11);
  CHECK(placement.earliest(2).begin() == 5);
  // Other work that stands there first puts the second coat off, or the session is not joined.
  Placement other(p);
  other.place(0, other.earliest(0));
  SolvedActivity at_once;
  at_once.pieces = {{3, 8}};
  other.place(2, at_once);
  CHECK_FALSE(other.earliest(1).placed());
}

TEST_CASE("a pause that the tool can lie through is anybody's, and so is one up to a coat") {
  SchedulingProblem p = cleaned_in_pauses();
  p.lags[0].delay = 3;
  p.activities[2].duration = 3;
  Placement placement(p);
  for (const std::size_t coat : {0U, 1U}) placement.place(coat, placement.earliest(coat));
  CHECK(placement.earliest(2).begin() == 3);
  // Dusting off before the coat makes the pause longer: the tool is cleaned before it.
  p.activities[1].duration = 4;
  p.activities[1].product_from = 2;
  Placement dusted(p);
  for (const std::size_t coat : {0U, 1U}) dusted.place(coat, dusted.earliest(coat));
  CHECK(dusted.solution().activities[1].begin() == 6);
  CHECK(dusted.earliest(2).begin() > 6);
}

TEST_CASE("split work is not cut for wet boards: it waits until they are dry") {
  SchedulingProblem p = open_day(30);
  p.tables = {testing::waiting_table(30, 2)};
  p.dust_settles = 2;
  p.activities = {{.duration = 1},
                  {.duration = 2, .wet_until = 0},
                  {.duration = 8, .splittable = true, .dusty = true}};
  p.lags = {{.from = 0, .to = 1, .delay = 9}};
  Placement placement(p);
  placement.place(0, placement.earliest(0));
  placement.place(1, placement.earliest(1));  // coat 10 to 12, wet until 17 (cold spell)
  const SolvedActivity sanding = placement.earliest(2);
  CHECK(sanding.pieces == std::vector<Run>{{17, 25}});
  CHECK(sanding.holds.back().by == Hold::By::dust);
}

TEST_CASE("a second coat before the first of its session moves the set-up forward") {
  SchedulingProblem p = open_day(20);
  p.products = {{2, 1}};
  p.activities = {{.duration = 1}, {.duration = 2, .product = 0}, {.duration = 2, .product = 0}};
  p.lags = {{.from = 0, .to = 1, .delay = 7}};
  Placement placement(p);
  placement.place(0, placement.earliest(0));
  placement.place(1, placement.earliest(1));  // 8 to 10, set-up 6 to 8
  const SolvedActivity first = placement.earliest(2);
  CHECK(first.begin() == 3);  // its set-up at 1 to 3, after the worker's slot 0
  placement.place(2, first);
  REQUIRE(placement.solution().sessions.size() == 1);
  CHECK(placement.solution().sessions[0].coats == Run{3, 10});
}

}  // namespace
}  // namespace tackfree::solver
