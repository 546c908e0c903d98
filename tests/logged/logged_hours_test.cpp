#include "tackfree/logged/logged_hours.hpp"

#include "tackfree/schedule/work_time.hpp"

#include <algorithm>

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

LogEntry hours_of(int id, LogKind kind, const char* from, const char* until,
                  const std::string& person = {}) {
  LogEntry line = entry(id, kind, "", "2027-04-05T10:00Z");
  line.hours = Interval{instant(from), instant(until)};
  line.person = person;
  return line;
}

Minutes worked(const WorkCalendar& calendar, const char* day) {
  const Instant begin = instant((std::string(day) + "T00:00Z").c_str());
  Minutes sum{0};
  for (const Interval& each : working_hours(calendar, {begin, begin + one_day}))
    sum += each.length();
  return sum;
}

Job with_hours(std::vector<LogEntry> entries) {
  Job job = logged_job(std::move(entries));
  for (auto& day : job.calendar.weekly) day = {{18 * 60, 22 * 60}};
  return job;
}

TEST_CASE("away takes hours off, free adds some, and the later line counts") {
  Job job = with_hours({hours_of(1, LogKind::away, "2027-04-15T00:00Z", "2027-04-16T00:00Z"),
                        hours_of(2, LogKind::free, "2027-04-15T20:00Z", "2027-04-15T21:00Z"),
                        hours_of(3, LogKind::free, "2027-04-16T22:00Z", "2027-04-16T23:00Z"),
                        hours_of(4, LogKind::free, "2027-04-17T08:00Z", "2027-04-17T10:00Z"),
                        hours_of(5, LogKind::away, "2027-04-17T09:00Z", "2027-04-17T12:00Z")});
  apply_logged_hours(job, instant("2027-04-05T12:00Z"));
  CHECK(worked(job.calendar, "2027-04-14") == 4 * one_hour);
  CHECK(worked(job.calendar, "2027-04-15") == one_hour);
  CHECK(worked(job.calendar, "2027-04-16") == 5 * one_hour);
  CHECK(worked(job.calendar, "2027-04-17") == 5 * one_hour);
}

TEST_CASE("who is free is free of appointments too; a line of later than now does not count") {
  Job job = with_hours({hours_of(1, LogKind::free, "2027-04-15T18:00Z", "2027-04-15T19:00Z")});
  job.calendar.busy_hours = {{instant("2027-04-15T00:00Z"), instant("2027-04-16T00:00Z")}};
  apply_logged_hours(job, instant("2027-04-05T09:00Z"));
  CHECK(worked(job.calendar, "2027-04-15") == Minutes(0));
  apply_logged_hours(job, instant("2027-04-05T10:00Z"));
  CHECK(worked(job.calendar, "2027-04-15") == one_hour);
}

TEST_CASE("nobody is there when everybody is away, less who is free again") {
  const auto away = [](Job job) {
    Minutes sum{0};
    for (const Interval& each : logged_away(job, instant("2027-04-05T12:00Z")))
      sum += each.length();
    return sum;
  };
  Job job = with_hours({hours_of(1, LogKind::away, "2027-04-15T00:00Z", "2027-04-16T00:00Z"),
                        hours_of(2, LogKind::free, "2027-04-15T20:00Z", "2027-04-15T21:00Z")});
  CHECK(away(job) == 23 * one_hour);
  job = with_hours({hours_of(1, LogKind::away, "2027-04-15T00:00Z", "2027-04-16T00:00Z", "Ada"),
                    hours_of(2, LogKind::away, "2027-04-15T20:00Z", "2027-04-16T03:00Z", "Ben")});
  job.people = {{.name = "Ada", .hours = job.calendar}, {.name = "Ben", .hours = job.calendar}};
  CHECK(away(job) == 4 * one_hour);
}

TEST_CASE("a line names whose hours they are, or is for everybody") {
  Job job = with_hours({hours_of(1, LogKind::away, "2027-04-15T00:00Z", "2027-04-16T00:00Z", "Ada"),
                        hours_of(2, LogKind::away, "2027-04-16T00:00Z", "2027-04-17T00:00Z")});
  job.people = {{.name = "Ada", .hours = job.calendar}, {.name = "Ben", .hours = job.calendar}};
  apply_logged_hours(job, instant("2027-04-05T12:00Z"));
  CHECK(worked(job.people[0].hours, "2027-04-15") == Minutes(0));
  CHECK(worked(job.people[1].hours, "2027-04-15") == 4 * one_hour);
  for (const Person& person : job.people) CHECK(worked(person.hours, "2027-04-16") == Minutes(0));
}

TEST_CASE("a plan works in no hour that the log has as away, and in those it has as free") {
  const auto works_in = [](const Plan& plan, const Interval& hours) {
    return std::ranges::any_of(plan.schedule.steps, [&](const DatedStep& step) {
      return std::ranges::any_of(step.pieces, [&](const Interval& piece) {
        return piece.begin < hours.end && hours.begin < piece.end;
      });
    });
  };
  const Interval first{instant("2027-04-06T00:00Z"), instant("2027-04-08T00:00Z")};
  const Plan before = planned_log({}, "2027-04-05T17:00Z");
  REQUIRE(works_in(before, first));
  const Plan without_days = planned_log(
      {hours_of(1, LogKind::away, "2027-04-06T00:00Z", "2027-04-08T00:00Z")}, "2027-04-05T17:00Z");
  CHECK_FALSE(works_in(without_days, first));
  const Interval night{instant("2027-04-06T02:00Z"), instant("2027-04-06T05:00Z")};
  REQUIRE_FALSE(works_in(before, night));
  const Plan at_night =
      planned_log({hours_of(1, LogKind::free, "2027-04-05T23:00Z", "2027-04-06T09:00Z"),
                   hours_of(2, LogKind::away, "2027-04-06T09:00Z", "2027-04-12T00:00Z")},
                  "2027-04-05T22:55Z");
  CHECK(works_in(at_night, {instant("2027-04-05T23:00Z"), instant("2027-04-06T09:00Z")}));
}

}  // namespace
}  // namespace tackfree
