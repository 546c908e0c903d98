#include "tackfree/solver/label_search.hpp"

#include "tackfree/solver/check.hpp"
#include "tackfree/solver/serial.hpp"

#include <algorithm>

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

constexpr std::int64_t plenty = 2'000'000;

/// The best (ready, sessions) of every schedule, by trying all starts: brute force with the checker
/// as its only judge.
struct BruteForce {
  const SchedulingProblem& p;
  Solution s{};
  std::pair<Slot, std::size_t> best{never, 0};

  void try_all(std::size_t next) {
    if (next == p.activities.size()) {
      judge();
      return;
    }
    const OpenTime& time = p.open_times[p.activities[next].open_time];
    for (Slot at = time.next_open(0); at != never; at = time.next_open(at + 1)) {
      s.activities[next].pieces = pieces_from(p, p.activities[next], at);
      if (!s.activities[next].pieces.empty() && fits_so_far(next)) try_all(next + 1);
    }
    s.activities[next].pieces.clear();
  }

  bool fits_so_far(std::size_t i) const {
    for (const Lag& lag : p.lags) {
      if (lag.to != i) continue;
      const Slot end = s.activities[lag.from].end();
      const Slot ready = lag.table ? p.tables[*lag.table][static_cast<std::size_t>(end)] : end;
      if (ready == never || s.activities[i].begin() < ready + lag.delay) return false;
    }
    for (std::size_t other = 0; other < i; ++other)
      if (overlap({s.activities[other].begin(), s.activities[other].end()},
                  {s.activities[i].begin(), s.activities[i].end()}))
        return false;
    return true;
  }

  void judge() {
    s.sessions.clear();
    for (std::size_t i = 0; i < p.activities.size(); ++i) {
      if (!p.activities[i].product) continue;
      const auto window = window_at(p, s.activities[i].begin());
      const Run run{s.activities[i].begin(), s.activities[i].end()};
      auto same = std::find_if(s.sessions.begin(), s.sessions.end(), [&](const SolvedSession& x) {
        return x.product == *p.activities[i].product && x.window == *window;
      });
      if (same == s.sessions.end())
        s.sessions.push_back({*p.activities[i].product, *window, run, {i}});
      else
        same->coats = {std::min(same->coats.begin, run.begin), std::max(same->coats.end, run.end)};
    }
    const Worth w = worth(p, s);
    if (std::pair(w.ready, w.sessions) < best && violations(p, s).empty())
      best = {w.ready, w.sessions};
  }
};

TEST_CASE(
    "on tiny random problems the search finds the brute-force optimum, in ready and sessions") {
  int compared = 0;
  for (unsigned seed = 0; seed < 4000 && compared < 400; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 16, 2);
    if (p.activities.size() > 5) continue;
    BruteForce brute{p};
    brute.s.activities.resize(p.activities.size());
    brute.try_all(0);
    const Solution known = serial_schedule(p);
    if (worth(p, known).ready == never) continue;  // nothing to improve on
    REQUIRE(brute.best.first != never);
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
