#include "tackfree/solver/fluid_bound.hpp"

#include "tackfree/solver/serial.hpp"

#include "effort.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

TEST_CASE("no schedule is ready before the bound") {
  int compared = 0;
  for (unsigned seed = 0; seed < tackfree::testing::cases(2000U); ++seed) {
    const SchedulingProblem p = testing::problem_with_every_rule(seed, 40, 4, true);
    const Worth w = worth(p, serial_schedule(p));
    if (w.unplaced > 0 || w.ready == never) continue;
    ++compared;
    CAPTURE(seed);
    CHECK(fluid_bound(p) <= w.ready);
  }
  CHECK(compared > tackfree::testing::cases(700));
}

TEST_CASE("two workers need half the hours of one, and a line of work alone its own time") {
  SchedulingProblem p;
  p.horizon = 60;
  p.windows = {{0, 10}, {20, 30}, {40, 50}};
  std::vector<Rule> start(60, Rule{1});
  for (const Run w : p.windows)
    for (Slot s = w.begin; s + 5 <= w.end; ++s) start[static_cast<std::size_t>(s)] = no_rule;
  p.open_times = {OpenTime(start)};
  LagTable own, dry(61, never);
  for (Slot e = 0; e <= 60; ++e) {
    own.push_back(e);
    if (e + 12 <= 60) dry[static_cast<std::size_t>(e)] = e + 12;
  }
  p.tables = {own, dry};
  for (std::size_t i = 0; i < 6; ++i) {
    p.activities.push_back({.duration = 5});
    p.goals.push_back({i, 0});
  }
  CHECK(fluid_bound(p) == 50);
  p.workers = 2;
  CHECK(fluid_bound(p) == 25);
  p.workers = 6;
  CHECK(fluid_bound(p) == 5);
  p.lags = {{.from = 0, .to = 1, .table = 1}};
  CHECK(fluid_bound(p) == 25);
}

}  // namespace
}  // namespace tackfree::solver
