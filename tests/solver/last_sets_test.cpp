#include "tackfree/solver/last_sets.hpp"

#include "tackfree/solver/serial.hpp"

#include <algorithm>

#include "effort.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

/// By slot: slots in windows before it.
std::vector<Slot> hours_before(const SchedulingProblem& p) {
  std::vector<Slot> hours(index(p.horizon) + 2, 0);
  for (Slot s = 0; s <= p.horizon; ++s)
    hours[index(s) + 1] = hours[index(s)] + (window_at(p, s) ? 1 : 0);
  return hours;
}

std::vector<Deadlines> last_sets(const SchedulingProblem& p, const std::vector<Chain>& chains,
                                 Slot target) {
  return deadlines_by_last_set(p, chains, hours_before(p), deadlines_for(chains, target));
}

/// Chains of a coat of 2 slots and, 12 slots after it, hardware of 3. Goals are met at its end.
SchedulingProblem hardware_after_coats(std::size_t count) {
  SchedulingProblem p;
  p.horizon = 40;
  p.windows = {{0, 10}, {20, 30}, {34, 40}};
  std::vector<Rule> start(40, Rule{1});
  for (const Run w : p.windows)
    for (Slot s = w.begin; s + 3 <= w.end; ++s) start[index(s)] = no_rule;
  p.open_times = {OpenTime(start)};
  LagTable own(41);
  for (Slot e = 0; e <= 40; ++e) own[index(e)] = e;
  p.tables = {own};
  for (std::size_t i = 0; i < count; ++i) {
    p.activities.push_back({.duration = 2});
    p.activities.push_back({.duration = 3});
    p.lags.push_back({.from = 2 * i, .to = 2 * i + 1, .delay = 12});
    p.goals.push_back({2 * i + 1, 0});
  }
  return p;
}

TEST_CASE("a chain that cannot end in the last window too has sooner deadlines") {
  // By slot 39 the last window serves one piece of hardware. The other is on by slot 30, so its
  // coat was in the first window; either may be the one.
  const SchedulingProblem p = hardware_after_coats(2);
  const auto chains = chains_of(p);
  const auto found = last_sets(p, *chains, 39);
  REQUIRE(found.size() == 2);
  CHECK(found[0] == Deadlines{{7, 27}, {22, 36}});
  CHECK(found[1] == Deadlines{{22, 36}, {7, 27}});
  // By slot 40 there is time for both.
  CHECK(last_sets(p, *chains, 40) == std::vector<Deadlines>{{{23, 37}, {23, 37}}});
}

TEST_CASE("where two of four fit, there are six last sets") {
  const SchedulingProblem p = hardware_after_coats(4);
  const auto found = last_sets(p, *chains_of(p), 40);
  CHECK(found.size() == 6);
  for (const Deadlines& deadlines : found)
    CHECK(std::ranges::count(deadlines, std::vector<Slot>{23, 37}) == 2);
}

TEST_CASE("nothing is in time where the target is too soon") {
  const SchedulingProblem p = hardware_after_coats(2);
  CHECK(last_sets(p, *chains_of(p), 2) == std::vector<Deadlines>{{{-1, -1}, {-1, -1}}});
}

TEST_CASE("each schedule keeps the deadlines of some last set") {
  int several = 0;
  for (unsigned seed = 0; seed < tackfree::testing::cases(3000U); ++seed) {
    const SchedulingProblem p = seed % 2 == 0 ? testing::problem_with_every_rule(seed, 40, 3, false)
                                              : testing::random_problem(seed, 60, 3);
    const auto chains = chains_of(p);
    if (!chains) continue;
    const Solution s = serial_schedule(p);
    const Worth w = worth(p, s);
    if (w.unplaced > 0 || w.ready == never) continue;
    CAPTURE(seed);
    const auto found = last_sets(p, *chains, w.ready);
    if (found.size() > 1) ++several;
    CHECK(std::ranges::any_of(found, [&](const Deadlines& deadlines) {
      for (std::size_t g = 0; g < chains->size(); ++g)
        for (std::size_t k = 0; k < (*chains)[g].size(); ++k)
          if (s.activities[(*chains)[g][k].activity].begin() > deadlines[g][k]) return false;
      return true;
    }));
  }
  CHECK(several > tackfree::testing::cases(300));
}

}  // namespace
}  // namespace tackfree::solver
