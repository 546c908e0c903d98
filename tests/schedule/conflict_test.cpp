#include "tackfree/schedule/conflict.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

Date conflict_day(const char* text) { return parse_date(text).value(); }

TEST_CASE("rules that cannot hold together are named, and only those") {
  Job job = testing::sample_job();
  // A Sunday, on which nobody works: the pin and the hours are in each other's way.
  job.batches[0].rules.pins = {
      {"finish", 1, Side::back, conflict_day("2027-04-11"), {0, 24 * 60}, 0}};
  job.batches[0].rules.no_coating_on = {conflict_day("2027-04-20")};
  const testing::Scheduled s = testing::scheduled(job);
  REQUIRE_FALSE(s.schedule.unplaced.empty());
  const auto& conflict = s.schedule.unplaced.front().conflict;
  REQUIRE(conflict.size() == 2);
  CHECK(conflict[0] == ConflictingRule::pins);
  CHECK(conflict[1] == ConflictingRule::working_hours);
  CHECK(s.schedule.unplaced.front().longest_stretch > Minutes(0));
}

TEST_CASE("of rules that are in the way twice over, a smallest set is named") {
  Job job = testing::sample_job();
  // Not before the Friday after: either the hours or that day would do against the pin.
  job.batches[0].rules.pins = {
      {"finish", 1, Side::back, conflict_day("2027-04-11"), {0, 24 * 60}, 0}};
  job.batches[0].rules.not_before = testing::instant("2027-04-16T00:00Z");
  const testing::Scheduled s = testing::scheduled(job);
  for (const Unplaced& each : s.schedule.unplaced) {
    if (each.by == HeldBy::previous_step) continue;
    CHECK(each.conflict.size() == 2);
    return;
  }
  FAIL("the pinned coat has a time");
}

TEST_CASE("sanding in quiet hours only: the hours and the quiet are named, in minutes") {
  Job job = testing::sample_job();
  job.calendar.no_power_sanding = {{0, 24 * 60}};
  const testing::Scheduled s = testing::scheduled(job);
  REQUIRE_FALSE(s.schedule.unplaced.empty());
  // Without the quiet hours it has a time, and with all hours open it still has none.
  CHECK(s.schedule.unplaced.front().by == HeldBy::quiet_hours);
  CHECK(s.schedule.unplaced.front().conflict.empty());
}

TEST_CASE("a coat longer than any window conflicts with nothing but the hours") {
  Job job = testing::sample_job();
  for (auto& day : job.calendar.weekly) day = {{18 * 60, 18 * 60 + 30}};
  job.parts[0].quantity = 6;
  const testing::Scheduled s = testing::scheduled(job);
  REQUIRE_FALSE(s.schedule.unplaced.empty());
  CHECK(s.schedule.unplaced.front().conflict.empty());
  CHECK(s.schedule.unplaced.front().by == HeldBy::calendar);
}

TEST_CASE("for a step that has a time with all rules kept no rule is named") {
  testing::Scheduled s = testing::scheduled(testing::sample_job());
  REQUIRE(s.schedule.unplaced.empty());
  s.schedule.unplaced.push_back({.operation = 0, .by = HeldBy::calendar});
  name_conflicts(s.job, s.list, s.air, drying_clocks(s.job, s.air), s.schedule);
  CHECK(s.schedule.unplaced.front().conflict.empty());
}

TEST_CASE("a step that nothing can help has no conflict, and one that waits is not looked into") {
  Job job = testing::sample_job();
  job.horizon = days(1);
  const testing::Scheduled s = testing::scheduled(job);
  REQUIRE(s.schedule.unplaced.size() > 1);
  for (const Unplaced& each : s.schedule.unplaced)
    if (each.by == HeldBy::previous_step) CHECK(each.conflict.empty());
}

}  // namespace
}  // namespace tackfree
