#include "tackfree/schedule/closed_days.hpp"

#include <algorithm>
#include <vector>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// Four weeks of 6 C and 50 % RH, then 20 C and 95 % RH.
AirRows cold_then_damp() {
  AirRows rows;
  for (int hour = 0; hour < 57 * 24; ++hour) {
    const Instant at = testing::instant("2027-04-05T00:00Z") + std::chrono::hours(hour);
    const bool cold = at < testing::instant("2027-05-02T00:00Z");
    rows.rows.push_back(
        {at, celsius(cold ? 6 : 20), std::nullopt, humidity_percent(cold ? 50 : 95), hour + 2});
  }
  return rows;
}

TEST_CASE("each rule that keeps a coat out is counted in days, the commonest first") {
  Job job = testing::sample_job();
  job.air = cold_then_damp();
  job.calendar.weekly[1] = {{18 * 60, 18 * 60 + 20}};  // Tuesdays are too short for any coat
  const testing::Scheduled s = testing::scheduled(job);
  REQUIRE_FALSE(s.schedule.unplaced.empty());
  const Unplaced& first = s.schedule.unplaced.front();
  REQUIRE(s.list.operations[first.operation].coating);
  // The sanding is done on Monday. From then on there are eight weeks of Monday to Saturday: eight
  // Tuesdays, and of the other days 4 x 5 in the cold weeks and 4 x 5 in the damp ones.
  CHECK(first.work_days == 48);
  REQUIRE(first.closed.size() == 3);
  CHECK(first.closed[0].gate == Gate::too_cold);
  CHECK(first.closed[0].days == 20);
  CHECK(first.closed[1].gate == Gate::too_humid);
  CHECK(first.closed[1].days == 20);
  CHECK(first.closed[2].by == HeldBy::calendar);
  CHECK(first.closed[2].days == 8);
}

// Three days of hours from six to ten in the evening, slot by slot.
TEST_CASE(
    "a day with an hour at which the step may start is not closed, whatever closes the rest") {
  constexpr solver::Rule cold = rules::first_gate, open = solver::no_rule;
  constexpr int hours = 24;
  const std::vector<std::vector<solver::Rule>> evenings{
      {cold, cold, cold, open},
      {cold, rules::calendar, rules::calendar, rules::calendar},
      {rules::quiet, cold, rules::quiet, rules::calendar}};
  PosedProblem posed;
  posed.grid = {{testing::instant("2027-04-05T00:00Z"), testing::instant("2027-04-08T00:00Z")},
                Minutes(60)};
  std::vector<solver::Rule> closed(3 * hours, rules::calendar);
  for (int day = 0; day < 3; ++day) {
    const solver::Slot from = day * hours + 18;
    posed.problem.windows.push_back({from, from + 4});
    std::ranges::copy(evenings.at(static_cast<std::size_t>(day)), closed.begin() + from);
  }
  posed.problem.open_times = {solver::OpenTime(closed)};
  posed.problem.activities.resize(1);
  posed.activity_of = {0};
  solver::Solution nothing;
  nothing.activities.resize(1);
  Unplaced step;
  count_closed_days(posed, nothing, Zone::utc(), step);
  CHECK(step.work_days == 3);
  REQUIRE(step.closed.size() == 2);
  for (const ClosedDays& each : step.closed) CHECK(each.days == 1);
  CHECK(step.closed[0].by == HeldBy::quiet_hours);
  CHECK(step.closed[1].gate == Gate::too_cold);
}

TEST_CASE("days before the coat below has dried are not counted") {
  Job job = testing::sample_job();
  job.air = ConstantAir{celsius(20), humidity_percent(50)};
  // Warm until the first coats are on, then cold for good.
  AirRows rows;
  for (int hour = 0; hour < 57 * 24; ++hour) {
    const Instant at = testing::instant("2027-04-05T00:00Z") + std::chrono::hours(hour);
    rows.rows.push_back({at, celsius(at < testing::instant("2027-04-08T00:00Z") ? 20 : 6),
                         std::nullopt, humidity_percent(50), hour + 2});
  }
  job.air = rows;
  const testing::Scheduled s = testing::scheduled(job);
  REQUIRE_FALSE(s.schedule.unplaced.empty());
  const Unplaced& first = s.schedule.unplaced.front();
  CHECK(s.list.operations[first.operation].coat > 0);
  CHECK(first.work_days > 0);
  CHECK(first.work_days < 48);
  std::size_t closed = 0;
  for (const ClosedDays& each : first.closed) closed += each.days;
  CHECK(closed <= first.work_days);
}

}  // namespace
}  // namespace tackfree
