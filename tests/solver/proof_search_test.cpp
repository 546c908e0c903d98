#include "tackfree/solver/proof_search.hpp"

#include "tackfree/solver/chains.hpp"
#include "tackfree/solver/serial.hpp"

#include <algorithm>

#include "bench/check.hpp"
#include "effort.hpp"
#include "solver/agreement.hpp"
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
    const auto found = best_schedule(p, serial_schedule(p), plenty);
    CAPTURE(seed);
    REQUIRE(found);
    if (testing::check_agreement(p, *found, true) == testing::Agreed::schedule) ++compared;
  }
  CHECK(compared >= 150);
}

TEST_CASE("with every rule on, the search finds the brute-force optimum or proves there is none") {
  int compared = 0, infeasible = 0, limited = 0;
  for (unsigned seed = 0; compared < tackfree::testing::cases(2000); ++seed) {
    const Slot horizon = seed % 2 == 0 ? 16 : 22;
    const SchedulingProblem p = testing::problem_with_every_rule(seed, horizon, 2, false);
    const auto found = best_schedule(p, serial_schedule(p), plenty);
    if (!found) continue;  // a chain that changes its room
    CAPTURE(seed);
    ++compared;
    if (testing::check_agreement(p, *found, true) == testing::Agreed::no_schedule)
      ++infeasible;
    else if (!p.maximum_lags.empty())
      ++limited;
  }
  CHECK(infeasible > tackfree::testing::cases(100));
  CHECK(limited > tackfree::testing::cases(250));
}

TEST_CASE("in at most so many sessions the search finds the brute-force optimum or none") {
  int later = 0, none = 0;
  for (unsigned seed = 0; later < 60 && seed < 20'000; ++seed) {
    SchedulingProblem p = seed % 2 == 0 ? testing::random_problem(seed, 24, 2)
                                        : testing::problem_with_every_rule(seed, 24, 2, false);
    if (p.activities.size() > 4) continue;
    // One product for all: waiting for each other saves sessions.
    for (Activity& a : p.activities)
      if (a.product) a.product = 0;
    const Solution known = serial_schedule(p);
    const auto soonest = best_schedule(p, known, plenty);
    if (!soonest || soonest->infeasible) continue;
    const Worth first = worth(p, soonest->solution);
    CAPTURE(seed);
    for (std::size_t most = first.sessions; most-- > 0;) {
      CAPTURE(most);
      const auto found = best_schedule(p, known, plenty, most);
      REQUIRE(found);
      if (testing::check_agreement(p, *found, true, most) == testing::Agreed::no_schedule) {
        ++none;
        break;
      }
      const Worth w = worth(p, found->solution);
      CHECK(w.sessions <= most);
      CHECK(w.ready > first.ready);
      ++later;
    }
  }
  CHECK(later == 60);
  CHECK(none > 60);
}

TEST_CASE("where lines of work wait for each other, the search finds the brute-force optimum") {
  int compared = 0, infeasible = 0;
  for (unsigned seed = 0; compared < 800; ++seed) {
    SchedulingProblem p = seed % 2 == 0 ? testing::random_problem(seed, 20, 2)
                                        : testing::problem_with_every_rule(seed, 22, 2, false);
    const auto count = p.activities.size();
    const std::size_t from = seed % count;
    const std::size_t to = from + 1 + seed / count % 3;
    const auto group = groups_of(p);
    if (to >= count || group[from] == group[to]) continue;
    p.lags.push_back({from, to, seed % 3 == 0 ? std::optional<std::size_t>(0) : std::nullopt, 0});
    const auto found = best_schedule(p, serial_schedule(p), plenty);
    if (!found) continue;
    CAPTURE(seed);
    ++compared;
    if (testing::check_agreement(p, *found, true) == testing::Agreed::no_schedule) ++infeasible;
  }
  CHECK(infeasible > 20);
  CHECK(infeasible < 700);
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

// A coat done early leaves a later session's set-up to the slots right before the next coat, which
// other work may need: doing more is not always better.
TEST_CASE("with long set-ups and narrow hours the search finds the brute-force optimum or none") {
  int infeasible = 0, found_some = 0;
  for (unsigned seed = 0; seed < tackfree::testing::cases(3000U); ++seed) {
    const SchedulingProblem p = testing::narrow_hours(seed);
    const auto found = best_schedule(p, serial_schedule(p), plenty);
    CAPTURE(seed);
    REQUIRE(found);
    if (testing::check_agreement(p, *found, true) == testing::Agreed::no_schedule)
      ++infeasible;
    else
      ++found_some;
  }
  CHECK(infeasible > tackfree::testing::cases(100));
  CHECK(found_some > tackfree::testing::cases(1000));
}

TEST_CASE("what is not made of chains is left to others") {
  SchedulingProblem p;
  p.horizon = 20;
  p.windows = {{0, 20}};
  p.open_times = {OpenTime(std::vector<Rule>(20, no_rule))};
  p.activities = {{.duration = 1}, {.duration = 1}, {.duration = 1}};
  p.workers = 2;
  CHECK_FALSE(best_schedule(p, serial_schedule(p), plenty));
}

}  // namespace
}  // namespace tackfree::solver
