#include "tackfree/solver/scheduling_problem.hpp"

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

TEST_CASE("the window of a slot is half-open") {
  SchedulingProblem p;
  p.windows = {{2, 5}, {5, 7}, {9, 12}};
  CHECK_FALSE(window_at(p, 1));
  CHECK(window_at(p, 2) == 0);
  CHECK(window_at(p, 4) == 0);
  CHECK(window_at(p, 5) == 1);
  CHECK_FALSE(window_at(p, 7));
  CHECK(window_at(p, 11) == 2);
  CHECK_FALSE(window_at(p, 12));
}

TEST_CASE("work is done when its last piece is") {
  int never_done = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 40, 3);
    for (const Activity& activity : p.activities) {
      const OpenTime& time = p.open_times[activity.open_time];
      for (Slot s = time.next_open(0); s != never; s = time.next_open(s + 1)) {
        const auto pieces = pieces_from(p, activity, s);
        CHECK(end_from(p, activity, s) == (pieces.empty() ? never : pieces.back().end));
        never_done += pieces.empty();
      }
    }
  }
  CHECK(never_done > 10);
}

TEST_CASE("worth counts what is left out first, then ready, sessions, late work, starts") {
  SchedulingProblem p;
  p.horizon = 20;
  p.windows = {{0, 20}};
  p.products = {{1, 2}};
  p.late = {{6, 20}};
  p.tables = {LagTable(21, 15)};
  p.activities = {{.duration = 3, .product = 0}, {.duration = 2}};
  p.goals = {{.activity = 0, .table = 0}};
  Solution s;
  s.activities.resize(2);
  s.activities[0].pieces = {{2, 5}};
  s.sessions = {{0, 0, {2, 5}, {0}}};
  Worth w = worth(p, s);
  CHECK(w.unplaced == 1);
  CHECK(w.ready == 15);
  CHECK(w.sessions == 1);
  CHECK(w.late == 1);  // one of the two slots of clean-up, 5 to 7
  s.activities[1].pieces = {{7, 9}};
  Worth whole = worth(p, s);
  CHECK(whole.late == 3);
  CHECK(whole < w);
  s.activities[0].pieces.clear();
  CHECK(worth(p, s).ready == never);
}

TEST_CASE("cleanings lie in the pauses that a tool cannot lie through, and take a worker") {
  const Product product{.set_up = 1, .clean_up = 2, .uncleaned = 3};
  CHECK(cleanings(product, {{20, 22}, {1, 3}, {6, 8}}) == std::vector<Run>{{8, 10}});
  CHECK(cleanings({.set_up = 1, .clean_up = 2}, {{1, 3}, {20, 22}}).empty());
  SchedulingProblem p;
  p.horizon = 30;
  p.products = {product};
  p.activities = {{.duration = 2, .product = 0}, {.duration = 2, .product = 0}, {.duration = 3}};
  Solution solution;
  solution.activities.resize(3);
  solution.activities[0].pieces = {{1, 3}};
  solution.activities[1].pieces = {{12, 14}};
  solution.activities[2].pieces = {{5, 8}};
  solution.sessions = {{0, 0, {1, 14}, {0, 1}}};
  CHECK(has_workers_for_cleanings(p, solution));
  solution.activities[2].pieces = {{4, 7}};
  CHECK_FALSE(has_workers_for_cleanings(p, solution));
  p.workers = 2;
  CHECK(has_workers_for_cleanings(p, solution));
  p.away = {{0, 5}};
  CHECK_FALSE(has_workers_for_cleanings(p, solution));
}

}  // namespace
}  // namespace tackfree::solver
