#include "tackfree/solver/partial_bounds.hpp"

#include "tackfree/solver/serial.hpp"

#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

TEST_CASE("what a schedule meets, no bound refutes at its start") {
  int compared = 0;
  for (unsigned seed = 0; seed < 1500; ++seed) {
    const SchedulingProblem p = testing::problem_with_every_rule(seed, 40, 3, false);
    const auto chains = chains_of(p);
    if (!chains) continue;
    const Solution s = serial_schedule(p);
    const Worth w = worth(p, s);
    if (w.unplaced > 0 || w.ready == never) continue;
    ++compared;
    CAPTURE(seed);
    const PartialBounds bounds(p, *chains, w.ready);
    PartialSchedule nothing_begun;
    CHECK(bounds.may_meet_deadlines_with_waits(nothing_begun));
    CHECK(bounds.sessions_to_come(PartialSchedule{}) <= static_cast<std::int32_t>(w.sessions));
    for (std::size_t g = 0; g < chains->size(); ++g) {
      std::vector<Slot> starts;
      bounds.earliest_starts(PartialSchedule{}, g, starts);
      for (std::size_t k = 0; k < (*chains)[g].size(); ++k) {
        const Slot begin = s.activities[(*chains)[g][k].activity].begin();
        CHECK(begin <= bounds.deadline(g, k));
        CHECK(begin >= starts[k]);
      }
    }
  }
  CHECK(compared > 300);
}

/// Does the bound of a target leave hope for a schedule with nothing begun?
bool may_be_ready(const SchedulingProblem& p, Slot target) {
  PartialSchedule nothing_begun;
  return PartialBounds(p, *chains_of(p), target).may_meet_deadlines_with_waits(nothing_begun);
}

/// `count` chains of one coat each that holds one of two places until long after the window.
SchedulingProblem coats_for_two_places(std::size_t count) {
  SchedulingProblem p;
  p.horizon = 40;
  p.windows = {{0, 10}, {20, 30}};
  std::vector<Rule> start(40, Rule{1});
  for (const Run w : p.windows)
    for (Slot s = w.begin; s < w.end; ++s) start[static_cast<std::size_t>(s)] = no_rule;
  p.open_times = {OpenTime(start)};
  LagTable held(41, 15), own(41);
  for (Slot e = 0; e <= 40; ++e) {
    held[static_cast<std::size_t>(e)] = std::max(e, e < 12 ? 15 : 35);
    own[static_cast<std::size_t>(e)] = e;
  }
  p.tables = {held, own};
  p.resources = {2};
  for (std::size_t i = 0; i < count; ++i) {
    p.activities.push_back({.duration = 1, .uses = {{0, 1, std::size_t{0}}}});
    p.goals.push_back({i, 1});
  }
  return p;
}

TEST_CASE("two places that are taken until the window is over serve two coats a window") {
  SchedulingProblem p = coats_for_two_places(4);
  CHECK(may_be_ready(p, 30));
  CHECK_FALSE(may_be_ready(p, 10));
  p = coats_for_two_places(5);
  CHECK_FALSE(may_be_ready(p, 30));
}

TEST_CASE("more work than hours is refuted") {
  SchedulingProblem p = coats_for_two_places(2);
  for (Activity& a : p.activities) {
    a.uses.clear();
    a.duration = 6;
  }
  CHECK_FALSE(may_be_ready(p, 11));
  CHECK(may_be_ready(p, 26));
}

TEST_CASE("the hours to spare of each chain and of all work make a partial schedule urgent") {
  // By hand: two coats of 2 and 3 slots by slot 10. They may start 8 and 7 hours late; of ten hours
  // five are work.
  SchedulingProblem p = coats_for_two_places(2);
  for (Activity& a : p.activities) a.uses.clear();
  p.activities[0].duration = 2;
  p.activities[1].duration = 3;
  const auto chains = chains_of(p);
  const PartialBounds bounds(p, *chains, 10);
  PartialSchedule nothing_begun;
  REQUIRE(bounds.may_meet_deadlines(nothing_begun));
  CHECK(bounds.urgency(nothing_begun) == doctest::Approx(1.0 / 9 + 1.0 / 8 + 1.0 / 6));
  PartialSchedule later = nothing_begun;
  later.free = 4;
  REQUIRE(bounds.may_meet_deadlines(later));
  CHECK(bounds.urgency(later) == doctest::Approx(1.0 / 5 + 1.0 / 4 + 1.0 / 2));
}

}  // namespace
}  // namespace tackfree::solver
