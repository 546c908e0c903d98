#include "tackfree/solver/label_search.hpp"

#include "tackfree/solver/check.hpp"
#include "tackfree/solver/serial.hpp"

#include <algorithm>

#include "solver/brute_force.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

constexpr std::int64_t plenty = 2'000'000;

TEST_CASE(
    "on tiny random problems the search finds the brute-force optimum, in ready and sessions") {
  int compared = 0;
  for (unsigned seed = 0; seed < 4000 && compared < 400; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 16, 2);
    if (p.activities.size() > 5) continue;
    testing::BruteForce brute(p);
    brute.run();
    const Solution known = serial_schedule(p);
    if (brute.best.first == never) continue;
    const auto found = best_schedule(p, known, plenty);
    CAPTURE(seed);
    REQUIRE(found);
    ++compared;
    CHECK(found->ready_proved);
    CHECK(found->sessions_proved);
    CHECK(violations(p, found->solution).empty());
    const Worth w = worth(p, found->solution);
    CHECK(w.ready == brute.best.first);
    CHECK(w.sessions == brute.best.second);
    CHECK(found->ready_bound == w.ready);
  }
  CHECK(compared >= 150);
}

TEST_CASE("with every rule on, the search finds the brute-force optimum or proves there is none") {
  int compared = 0, infeasible = 0, limited = 0;
  for (unsigned seed = 0; compared < 2000; ++seed) {
    const Slot horizon = seed % 2 == 0 ? 16 : 22;
    const SchedulingProblem p = testing::problem_with_every_rule(seed, horizon, 2, false);
    const Solution known = serial_schedule(p);
    const auto found = best_schedule(p, known, plenty);
    if (!found) continue;  // a chain that changes its room
    testing::BruteForce brute(p);
    brute.run();
    CAPTURE(seed);
    ++compared;
    const Worth w = worth(p, found->solution);
    for (const std::string& broken : violations(p, found->solution)) FAIL_CHECK(broken);
    if (brute.best.first == never) {
      ++infeasible;
      CHECK(found->infeasible);
      CHECK((w.unplaced > 0 || w.ready == never));
      continue;
    }
    if (!p.maximum_lags.empty()) ++limited;
    CHECK_FALSE(found->infeasible);
    CHECK(found->ready_proved);
    CHECK(found->sessions_proved);
    CHECK(w.ready == brute.best.first);
    CHECK(w.sessions == brute.best.second);
  }
  CHECK(infeasible > 100);
  CHECK(limited > 300);
}

TEST_CASE("larger random problems: never worse than the serial schedule, and no rule broken") {
  int better = 0;
  for (unsigned seed = 0; seed < 300; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 60, 3);
    const Solution known = serial_schedule(p);
    const auto found = best_schedule(p, known, plenty);
    if (!found) continue;
    CAPTURE(seed);
    for (const std::string& broken : violations(p, found->solution)) FAIL_CHECK(broken);
    CHECK(worth(p, found->solution) <= worth(p, known));
    CHECK(found->ready_bound <= worth(p, found->solution).ready);
    if (worth(p, found->solution) < worth(p, known)) ++better;
  }
  CHECK(better > 10);
}

TEST_CASE("a search that is cut short proves nothing it has not proved, and keeps what is known") {
  int cut = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 60, 3);
    const Solution known = serial_schedule(p);
    const auto found = best_schedule(p, known, 3);
    if (!found || found->sessions_proved) continue;
    ++cut;
    CHECK(worth(p, found->solution) <= worth(p, known));
    const auto whole = best_schedule(p, known, plenty);
    CHECK(found->ready_bound <= worth(p, whole->solution).ready);
  }
  CHECK(cut > 50);
}

TEST_CASE("a coat waits for another to share its session when that costs no time") {
  SchedulingProblem p;
  p.horizon = 60;
  p.windows = {{0, 10}, {20, 30}, {40, 50}};
  std::vector<Rule> start(60, Rule{1});
  for (const Run w : p.windows)
    for (Slot s = w.begin; s + 2 <= w.end; ++s) start[static_cast<std::size_t>(s)] = no_rule;
  p.open_times = {OpenTime(start)};
  LagTable dry(61, never);
  for (Slot e = 0; e + 12 <= 60; ++e) dry[static_cast<std::size_t>(e)] = e + 12;
  p.tables = {dry};
  p.products = {{1, 1}};
  // One coat alone; two coats after each other. Ready is set by the second of the pair.
  p.activities = {
      {.duration = 2, .product = 0}, {.duration = 2, .product = 0}, {.duration = 2, .product = 0}};
  p.lags = {{.from = 1, .to = 2, .table = 0}};
  p.goals = {{0, 0}, {1, 0}, {2, 0}};
  const Solution known = placed_by_priority(p, {0, 1, 2});
  const auto found = best_schedule(p, known, plenty);
  REQUIRE(found);
  CHECK(worth(p, found->solution).sessions == 2);
}

TEST_CASE("what is not made of chains is left to others") {
  SchedulingProblem p;
  p.horizon = 20;
  p.windows = {{0, 20}};
  p.open_times = {OpenTime(std::vector<Rule>(20, no_rule))};
  p.activities = {{.duration = 1}, {.duration = 1}, {.duration = 1}};
  p.lags = {{.from = 0, .to = 2}, {.from = 1, .to = 2}};  // two lines of work that join
  CHECK_FALSE(best_schedule(p, serial_schedule(p), plenty));
}

}  // namespace
}  // namespace tackfree::solver
