#include "tackfree/solver/serial.hpp"

#include <algorithm>

#include "bench/check.hpp"
#include "effort.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

/// Two evenings of ten slots each, all open.
SchedulingProblem two_evenings() {
  SchedulingProblem p;
  p.horizon = 40;
  p.windows = {{5, 15}, {25, 35}};
  std::vector<Rule> present(40, Rule{1});
  for (const Run w : p.windows)
    for (Slot s = w.begin; s < w.end; ++s) present[static_cast<std::size_t>(s)] = no_rule;
  p.open_times = {OpenTime(present)};
  return p;
}

TEST_CASE("work starts when the first window opens and says that the calendar held it") {
  SchedulingProblem p = two_evenings();
  p.activities = {{.duration = 3}};
  const Solution s = serial_schedule(p);
  CHECK(s.activities[0].pieces == std::vector<Run>{{5, 8}});
  REQUIRE(s.activities[0].holds.size() == 1);
  CHECK(s.activities[0].holds[0].by == Hold::By::rule);
  CHECK(s.activities[0].holds[0].rule == 1);
  CHECK(s.activities[0].holds[0].until == 5);
}

TEST_CASE("splittable work runs on in the next window, whole work does not") {
  SchedulingProblem p = two_evenings();
  p.activities = {{.duration = 13, .splittable = true}};
  CHECK(serial_schedule(p).activities[0].pieces == std::vector<Run>{{5, 15}, {25, 28}});
  p.activities = {{.duration = 8, .splittable = true}, {.duration = 4, .splittable = true}};
  p.lags = {{.from = 0, .to = 1}};
  CHECK(serial_schedule(p).activities[1].pieces == std::vector<Run>{{13, 15}, {25, 27}});
}

TEST_CASE("no piece of split work is shorter than the shortest worth starting") {
  SchedulingProblem p = two_evenings();
  p.shortest_piece = 3;
  p.activities = {{.duration = 8, .splittable = true}, {.duration = 4, .splittable = true}};
  p.lags = {{.from = 0, .to = 1}};
  CHECK(serial_schedule(p).activities[1].pieces == std::vector<Run>{{25, 29}});
}

TEST_CASE("a tabulated lag counts from the end of the earlier activity") {
  SchedulingProblem p = two_evenings();
  LagTable dry(41);
  for (std::size_t e = 0; e < dry.size(); ++e) dry[e] = e < 10 ? 12 : 30;
  p.tables = {dry};
  p.activities = {{.duration = 2}, {.duration = 2}};
  p.lags = {{.from = 0, .to = 1, .table = 0}};
  Solution s = serial_schedule(p);
  CHECK(s.activities[1].begin() == 12);
  CHECK(s.activities[1].holds.back().by == Hold::By::lag);
  p.activities[0].duration = 6;  // ends at 11, after the table has jumped
  s = serial_schedule(p);
  CHECK(s.activities[1].begin() == 30);
}

TEST_CASE("coats of one product in one window share set-up and clean-up") {
  SchedulingProblem p = two_evenings();
  p.products = {{1, 2}};
  p.activities = {{.duration = 2, .product = 0}, {.duration = 2, .product = 0}};
  const Solution s = serial_schedule(p);
  CHECK(s.activities[0].begin() == 6);  // after one slot of set-up
  CHECK(s.activities[1].begin() == 8);  // no second set-up, clean-up moved behind it
  REQUIRE(s.sessions.size() == 1);
  CHECK(s.sessions[0].coats == Run{6, 10});
}

TEST_CASE("clean-up must end inside the window") {
  SchedulingProblem p = two_evenings();
  p.products = {{1, 2}};
  p.activities = {{.duration = 7, .product = 0}};
  CHECK(serial_schedule(p).activities[0].begin() == 6);
  p.activities[0].duration = 8;
  const Solution s = serial_schedule(p);
  CHECK_FALSE(s.activities[0].placed());
}

TEST_CASE("dust stays away from wet work in both directions") {
  SchedulingProblem p = two_evenings();
  LagTable dry(41, never);
  for (std::size_t e = 0; e + 4 < dry.size(); ++e) dry[e] = static_cast<Slot>(e) + 4;
  p.tables = {dry};
  p.dust_settles = 2;
  p.activities = {{.duration = 2, .wet_until = 0},
                  {.duration = 2, .splittable = true, .dusty = true}};
  // The coat first: wet from 5 until 7 + 4.
  Solution s = placed_by_priority(p, {0, 1});
  CHECK(s.activities[1].begin() == 11);
  CHECK(s.activities[1].holds.back().by == Hold::By::dust);
  // The sanding first: it ends at 7 and the dust settles until 9.
  s = placed_by_priority(p, {1, 0});
  CHECK(s.activities[0].begin() == 9);
}

TEST_CASE("what never dries is left out, with all that waits for it, and the rest is placed") {
  SchedulingProblem p = two_evenings();
  p.tables = {LagTable(41, never)};
  p.activities = {{.duration = 2}, {.duration = 2}, {.duration = 2}, {.duration = 1}};
  p.lags = {{.from = 0, .to = 1, .table = 0}, {.from = 1, .to = 2}};
  const Solution s = serial_schedule(p);
  CHECK(s.activities[0].placed());
  CHECK_FALSE(s.activities[1].placed());
  CHECK_FALSE(s.activities[2].placed());
  CHECK(s.activities[3].placed());
  CHECK(s.activities[1].holds.back().by == Hold::By::lag);
  CHECK(worth(p, s).unplaced == 2);
}

TEST_CASE("an activity with no open slot names the rule that closes most of the working time") {
  SchedulingProblem p = two_evenings();
  std::vector<Rule> closed(40, Rule{1});
  for (std::size_t s = 5; s < 15; ++s) closed[s] = 2;
  for (std::size_t s = 25; s < 28; ++s) closed[s] = 3;
  p.open_times.emplace_back(closed);
  p.activities = {{.duration = 2, .open_time = 1}};
  const Solution s = serial_schedule(p);
  REQUIRE_FALSE(s.activities[0].placed());
  CHECK(s.activities[0].holds.back().rule == 2);
}

TEST_CASE("schedules of random problems break no rule") {
  int placed = 0;
  for (unsigned seed = 0; seed < 2000; ++seed) {
    const SchedulingProblem p = testing::random_problem(seed, 40, 3);
    const Solution s = serial_schedule(p);
    const auto broken = violations(p, s);
    CHECK_MESSAGE(broken.empty(), "seed ", seed, ": ", broken.empty() ? "" : broken.front());
    if (worth(p, s).unplaced == 0) ++placed;
  }
  CHECK(placed > 1000);  // the problems are not all hopeless
}

TEST_CASE("with every rule on too, and maximum lags put work off rather than out") {
  int placed = 0, repaired = 0;
  for (unsigned seed = 0; seed < 2000; ++seed) {
    const SchedulingProblem p = testing::problem_with_every_rule(seed, 40, 3, true);
    const Solution s = serial_schedule(p);
    const auto broken = violations(p, s);
    CHECK_MESSAGE(broken.empty(), "seed ", seed, ": ", broken.empty() ? "" : broken.front());
    if (worth(p, s).unplaced == 0) ++placed;
    if (worth(p, s).unplaced == 0 && !p.maximum_lags.empty()) ++repaired;
  }
  CHECK(placed > 900);
  CHECK(repaired > 300);
}

TEST_CASE("the first of two joined by a maximum lag waits until the second can follow in time") {
  SchedulingProblem p = two_evenings();
  std::vector<Rule> second(40, Rule{3});
  second[26] = no_rule;
  p.open_times.emplace_back(second);
  p.activities = {{.duration = 2}, {.duration = 2, .open_time = 1}};
  p.lags = {{.from = 0, .to = 1}};
  p.maximum_lags = {{.from = 0, .to = 1, .delay = 13}};
  const Solution s = serial_schedule(p);
  CHECK(s.activities[0].begin() == 11);
  CHECK(s.activities[1].begin() == 26);
  // What is placed again is counted again.
  std::int64_t placed = 0;
  placed_by_priority(p, {0, 1}, &placed);
  CHECK(placed == 4);
  p.maximum_lags[0].delay = -30;
  const Solution none = serial_schedule(p);
  CHECK_FALSE(none.activities[1].placed());
  CHECK(none.activities[1].holds.back().by == Hold::By::maximum_lag);
}

TEST_CASE("space that is held until dry keeps the next one waiting, and two workers do not help") {
  SchedulingProblem p = two_evenings();
  p.tables = {testing::waiting_table(40, 4)};
  p.resources = {3};
  p.workers = 2;
  p.activities = {{.duration = 1, .uses = {{0, 2, std::size_t{0}}}},
                  {.duration = 1, .uses = {{0, 2, std::size_t{0}}}},
                  {.duration = 1, .uses = {{0, 1, std::nullopt}}}};
  const Solution s = serial_schedule(p);
  CHECK(s.activities[0].begin() == 5);
  CHECK(s.activities[2].begin() == 5);
  CHECK(s.activities[1].begin() == p.tables[0][6]);
  CHECK(s.activities[1].holds.back().by == Hold::By::resource);
}

/// Every schedule of whole activities, by trying all starts: least `ready` of those that keep all
/// rules, for problems without splitting.
void try_all(const SchedulingProblem& p, Solution& s, std::size_t next, Slot& best) {
  if (next == p.activities.size()) {
    s.sessions.clear();
    for (std::size_t i = 0; i < p.activities.size(); ++i) {
      if (!p.activities[i].product) continue;
      const auto window = window_at(p, s.activities[i].begin());
      if (!window) return;
      auto same = std::find_if(s.sessions.begin(), s.sessions.end(), [&](const SolvedSession& x) {
        return x.product == *p.activities[i].product && x.window == *window;
      });
      const Run run{s.activities[i].begin(), s.activities[i].end()};
      if (same == s.sessions.end())
        s.sessions.push_back({*p.activities[i].product, *window, run, {i}});
      else
        same->coats = {std::min(same->coats.begin, run.begin), std::max(same->coats.end, run.end)};
    }
    if (violations(p, s).empty()) best = std::min(best, worth(p, s).ready);
    return;
  }
  const OpenTime& time = p.open_times[p.activities[next].open_time];
  for (Slot at = time.next_open(0); at != never; at = time.next_open(at + 1)) {
    s.activities[next].pieces = {{at, at + p.activities[next].duration}};
    try_all(p, s, next + 1, best);
  }
}

TEST_CASE("no schedule of a tiny problem is ready before the best of all, and most equal it") {
  int compared = 0, equal = 0;
  for (unsigned seed = 0; seed < 400 && compared < tackfree::testing::cases(120); ++seed) {
    SchedulingProblem p = testing::random_problem(seed, 18, 2);
    if (p.activities.size() > 4) continue;
    for (Activity& a : p.activities)
      if (a.splittable) a = {.duration = 1, .open_time = 0, .dusty = true};
    const Solution found = serial_schedule(p);
    Solution s;
    s.activities.resize(p.activities.size());
    Slot best = never;
    try_all(p, s, 0, best);
    if (best == never) {
      CHECK(worth(p, found).ready == never);
      continue;
    }
    ++compared;
    CHECK_MESSAGE(worth(p, found).ready >= best, "seed ", seed);
    if (worth(p, found).ready == best) ++equal;
  }
  CHECK(compared >= tackfree::testing::cases(60));
  CHECK(equal * 10 >= compared * 9);
}

TEST_CASE("the same problem gives the same schedule") {
  const SchedulingProblem p = testing::random_problem(7, 60, 3);
  const Solution a = serial_schedule(p), b = serial_schedule(p);
  for (std::size_t i = 0; i < a.activities.size(); ++i)
    CHECK(a.activities[i].pieces == b.activities[i].pieces);
}

}  // namespace
}  // namespace tackfree::solver
