#include "tackfree/schedule/attended_work.hpp"

#include <algorithm>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::instant;
using testing::sample_job;
using testing::scheduled;

TEST_CASE("the kinds and the days add up to the pieces and sessions of the schedule") {
  const auto s = scheduled(sample_job());
  Minutes all{0};
  for (const DatedStep& step : s.schedule.steps)
    for (const Interval& piece : step.pieces) all += piece.length();
  for (const Session& session : s.schedule.sessions)
    all += session.set_up.length() + session.clean_up.length();
  const AttendedWork work = attended_work(s.list, s.schedule, s.job.calendar.zone);
  CHECK(work.in_all == all);
  CHECK(all > Minutes(0));
  Minutes kinds{0}, by_day{0};
  for (const WorkOfKind& each : work.kinds) kinds += each.work;
  for (const WorkOfDay& day : work.days) by_day += day.work;
  CHECK(kinds == all);
  CHECK(by_day == all);
  CHECK(std::is_sorted(work.days.begin(), work.days.end(),
                       [](const WorkOfDay& a, const WorkOfDay& b) { return a.on < b.on; }));
  CHECK(work.kinds.back().kind == KindOfWork(SessionWork::clean_up));
  CHECK(work.without_time == Duration());
}

TEST_CASE("no day has more work than its hours") {
  const auto s = scheduled(sample_job());
  for (const WorkOfDay& day : attended_work(s.list, s.schedule, s.job.calendar.zone).days)
    CHECK(day.work <= (weekday_index(day.on) == 5 ? Minutes(8 * 60) : Minutes(3 * 60 + 30)));
}

/// One step in the given pieces.
Schedule in_pieces(const std::vector<Interval>& pieces) {
  Schedule schedule;
  DatedStep step;
  step.pieces = pieces;
  schedule.steps = {step};
  return schedule;
}

TEST_CASE("work past local midnight counts on both days") {
  OperationList list;
  list.operations = {Operation{}};
  // 23:30 to 01:00 in Berlin, summer time.
  const Schedule late = in_pieces({{instant("2027-07-01T21:30Z"), instant("2027-07-01T23:00Z")}});
  const AttendedWork work = attended_work(list, late, *Zone::named("Europe/Berlin"));
  REQUIRE(work.days.size() == 2);
  CHECK(iso_date(work.days[0].on) == "2027-07-01");
  CHECK(work.days[0].work == Minutes(30));
  CHECK(work.days[1].work == Minutes(60));
  REQUIRE(work.kinds.size() == 1);
  CHECK(work.kinds[0].kind == KindOfWork(OperationKind::coat));
}

TEST_CASE("steps without a time are counted apart") {
  OperationList list;
  list.operations = {Operation{}, Operation{}};
  list.operations[1].work = minutes(40);
  Schedule schedule = in_pieces({{instant("2027-07-01T09:00Z"), instant("2027-07-01T10:00Z")}});
  schedule.unplaced.push_back({.operation = 1});
  const AttendedWork work = attended_work(list, schedule, Zone::utc());
  CHECK(work.in_all == Minutes(60));
  CHECK(work.without_time.in(minutes) == doctest::Approx(40));
}

}  // namespace
}  // namespace tackfree
