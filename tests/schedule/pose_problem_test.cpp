#include "tackfree/schedule/pose_problem.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using solver::Slot;

PosedProblem bridge_of(const testing::Scheduled& s) {
  return pose_problem(s.job, s.list, s.air, drying_clocks(s.job, s.air), s.schedule.span);
}

TEST_CASE("windows that begin off the grid are not entered early or left late") {
  Job job = testing::sample_job();
  for (auto& day : job.calendar.weekly) day = {{18 * 60 + 2, 21 * 60 + 28}};
  const PosedProblem b = bridge_of(testing::scheduled(job));
  CHECK(b.grid.at(b.problem.windows[0].begin) == testing::instant("2027-04-05T18:05Z"));
  CHECK(b.grid.at(b.problem.windows[0].end) == testing::instant("2027-04-05T21:25Z"));
}

TEST_CASE("a slot is quiet if any part of it is") {
  Job job = testing::sample_job();
  job.calendar.no_power_sanding = {{19 * 60 + 2, 19 * 60 + 8}};
  const PosedProblem b = bridge_of(testing::scheduled(job));
  const auto& sanding = b.problem.open_times[b.problem.activities[0].open_time];
  const Slot seven = b.grid.slot_up(testing::instant("2027-04-05T19:00Z"));
  CHECK(sanding.is_open(seven - 1));
  CHECK(sanding.rule(seven) == rules::quiet);
  CHECK(sanding.rule(seven + 1) == rules::quiet);
  CHECK(sanding.is_open(seven + 2));
}

TEST_CASE("lag tables do not decrease, and hold the clock's own answers where a coat can end") {
  const testing::Scheduled s = testing::scheduled(testing::sample_job());
  const PosedProblem b = bridge_of(s);
  for (const auto& table : b.problem.tables)
    for (std::size_t e = 1; e < table.size(); ++e) CHECK(table[e] >= table[e - 1]);
  for (const DatedStep& step : s.schedule.steps) {
    const auto& activity = b.problem.activities[b.activity_of[step.operation]];
    if (!s.list.operations[step.operation].coating) continue;
    const Slot end = b.grid.slot_up(step.end());
    CHECK(b.problem.tables[*activity.wet_until][static_cast<std::size_t>(end)] ==
          b.grid.slot_up(*step.reaches[index_of(Stage::dust_free)]));
  }
}

bool last_coat(const Operation& operation) { return operation.coat == operation.coats; }

TEST_CASE("dusting off is the first stretch of its coat's activity") {
  const testing::Scheduled s = testing::scheduled(testing::sample_job());
  const PosedProblem b = bridge_of(s);
  int found = 0;
  for (std::size_t i = 0; i < s.list.operations.size(); ++i) {
    if (s.list.operations[i].kind != OperationKind::dust_off) continue;
    const std::size_t coat = b.operation_of[b.activity_of[i]];
    CHECK(s.list.operations[coat].kind == OperationKind::coat);
    CHECK(s.list.operations[coat].coat == s.list.operations[i].coat);
    CHECK(b.place[i] == solver::Run{0, b.grid.slots_up(s.list.operations[i].work)});
    CHECK(b.place[coat].begin == b.place[i].end);
    ++found;
  }
  CHECK(found == 6);  // each side of three coats
}

TEST_CASE("the goals are the light use of every batch's last coats") {
  Job job = testing::sample_job();
  testing::add_legs(job);
  const testing::Scheduled s = testing::scheduled(job);
  const PosedProblem b = bridge_of(s);
  CHECK(b.problem.goals.size() == 3);  // two sides of the top, the legs in one go
  for (const solver::Goal& goal : b.problem.goals)
    CHECK(last_coat(s.list.operations[b.operation_of[goal.activity]]));
}

}  // namespace
}  // namespace tackfree
