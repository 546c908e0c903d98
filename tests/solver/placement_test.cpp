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
