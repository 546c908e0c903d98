#include "tackfree/schedule/busy_hours.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

BusyEvent event(const char* on, int clock, Minutes longer) {
  BusyEvent busy;
  busy.zone = Zone::named("America/New_York").value();
  busy.begin = {parse_date(on).value(), clock};
  busy.longer = longer;
  return busy;
}

std::vector<std::string> begins(const BusyEvent& busy, const char* from, const char* to) {
  std::vector<std::string> texts;
  for (const Interval& stretch : busy_hours({busy}, {testing::instant(from), testing::instant(to)}))
    texts.push_back(iso_local(stretch.begin, busy.zone).substr(0, 16));
  return texts;
}

// The rules and the dates they give are worked examples of RFC 5545, 3.8.5.3, their year moved so
// that weekdays and lengths of months agree (1997 and 2025 begin on a Wednesday and are common).
TEST_CASE("daily until a day, every second Friday the 13th's month, and last Monday but one") {
  BusyEvent daily = event("2025-09-02", 540, one_hour);
  daily.repeats = Recurrence{.interval = 10, .count = 5};
  CHECK(begins(daily, "2025-09-01T00:00Z", "2026-09-01T00:00Z") ==
        std::vector<std::string>{"2025-09-02T09:00", "2025-09-12T09:00", "2025-09-22T09:00",
                                 "2025-10-02T09:00", "2025-10-12T09:00"});
  BusyEvent monday = event("2025-09-22", 540, one_hour);
  monday.repeats = Recurrence{.every = Recurrence::Every::month, .count = 6, .weekdays = {{-2, 0}}};
  CHECK(begins(monday, "2025-09-01T00:00Z", "2026-09-01T00:00Z") ==
        std::vector<std::string>{"2025-09-22T09:00", "2025-10-20T09:00", "2025-11-17T09:00",
                                 "2025-12-22T09:00", "2026-01-19T09:00", "2026-02-16T09:00"});
  BusyEvent third_to_last = event("2025-09-28", 540, one_hour);
  third_to_last.repeats = Recurrence{.every = Recurrence::Every::month, .month_days = {-3}};
  CHECK(begins(third_to_last, "2025-09-01T00:00Z", "2026-01-01T00:00Z") ==
        std::vector<std::string>{"2025-09-28T09:00", "2025-10-29T09:00", "2025-11-28T09:00",
                                 "2025-12-29T09:00"});
}

// RFC 5545, 3.3.10 (end): the day on which the week begins matters to every second week. Years
// moved as above: 5 August 1997 and 2025 are both Tuesdays.
TEST_CASE("every second week depends on the day on which weeks begin") {
  BusyEvent weekly = event("2025-08-05", 540, one_hour);
  weekly.repeats = Recurrence{
      .every = Recurrence::Every::week, .interval = 2, .count = 4, .weekdays = {{0, 1}, {0, 6}}};
  CHECK(begins(weekly, "2025-08-01T00:00Z", "2026-01-01T00:00Z") ==
        std::vector<std::string>{"2025-08-05T09:00", "2025-08-10T09:00", "2025-08-19T09:00",
                                 "2025-08-24T09:00"});
  weekly.repeats->week_begins_on = 6;
  CHECK(begins(weekly, "2025-08-01T00:00Z", "2026-01-01T00:00Z") ==
        std::vector<std::string>{"2025-08-05T09:00", "2025-08-17T09:00", "2025-08-19T09:00",
                                 "2025-08-31T09:00"});
}

TEST_CASE("a day of the year that has 25 hours is busy for all of them") {
  BusyEvent day = event("2027-11-07", 0, Minutes(0));
  day.days = 1;
  const auto hours = busy_hours(
      {day}, {testing::instant("2027-11-01T00:00Z"), testing::instant("2027-12-01T00:00Z")});
  REQUIRE(hours.size() == 1);
  CHECK(hours[0].length() == Minutes(25 * 60));
}

TEST_CASE("a begin that is left out is free, and one that began before the plan is still on") {
  BusyEvent weekly = event("2027-04-05", 1380, Minutes(180));
  weekly.repeats = Recurrence{.every = Recurrence::Every::week};
  weekly.left_out.at = {testing::instant("2027-04-13T03:00Z")};
  const auto hours = busy_hours(
      {weekly}, {testing::instant("2027-04-06T05:00Z"), testing::instant("2027-04-21T00:00Z")});
  REQUIRE(hours.size() == 2);
  CHECK(iso_utc(hours[0].begin) == "2027-04-06T05:00:00Z");
  CHECK(iso_utc(hours[0].end) == "2027-04-06T06:00:00Z");
  CHECK(iso_utc(hours[1].begin) == "2027-04-20T03:00:00Z");
}

// 1600-01-01 to 2027-04-10 are 156 050 days by the calendar: the last of so many, the first
// counted.
TEST_CASE("a count from the year 1600 ends on its day") {
  BusyEvent daily = event("1600-01-01", 540, one_hour);
  daily.repeats = Recurrence{
      .count =
          days_between(parse_date("1600-01-01").value(), parse_date("2027-04-10").value()) + 1};
  CHECK(begins(daily, "2027-04-09T00:00Z", "2027-05-01T00:00Z") ==
        std::vector<std::string>{"2027-04-09T09:00", "2027-04-10T09:00"});
  daily.repeats->count = *daily.repeats->count - 3;
  CHECK(begins(daily, "2027-04-09T00:00Z", "2027-05-01T00:00Z").empty());
}

TEST_CASE("busy hours worked out once are those of the events, and too many are refused") {
  Job job = testing::sample_job("shellac");
  BusyEvent daily = event("2027-04-05", 540, one_hour);
  daily.repeats = Recurrence{};
  job.calendar.busy = {daily};
  const Interval span{testing::instant("2027-04-05T00:00Z"), testing::instant("2027-06-05T00:00Z")};
  const auto before = busy_hours(job.calendar, span);
  Problems problems;
  settle_busy_hours(job, span, problems);
  CHECK(problems.empty());
  CHECK(job.calendar.busy.empty());
  CHECK(busy_hours(job.calendar, span) == before);
  const Interval year{span.begin, span.begin + 366 * one_day};
  for (int hour = 0; hour < 20; ++hour) {
    BusyEvent each = event("2027-04-05", 60 * hour, Minutes(5));
    each.repeats = Recurrence{};
    job.calendar.busy.push_back(each);
  }
  settle_busy_hours(job, year, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].key == "busy_files");
}

TEST_CASE("a person has 3,300 busy stretches in the days of the plan at most") {
  const Interval span{testing::instant("2027-04-05T00:00Z"), testing::instant("2027-06-05T00:00Z")};
  Job job = testing::sample_job("shellac");
  for (int i = 0; i < 3'300; ++i) {
    const Instant begin = span.begin + Minutes(10 * i);
    job.calendar.busy_hours.push_back({begin, begin + Minutes(5)});
  }
  Job more = job;
  more.people = {{"Ada", job.calendar, 0}};
  const Instant last = span.begin + Minutes(33'000);
  more.people[0].hours.busy_hours.push_back({last, last + Minutes(5)});
  Problems problems;
  settle_busy_hours(job, span, problems);
  CHECK(problems.empty());
  settle_busy_hours(more, span, problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].found == "3301 busy stretches in the days of the plan, Ada");
  CHECK(problems[0].wanted == "wanted at most 3300");
  CHECK(problems[0].hint ==
        "export fewer calendars, or plan fewer days ahead with \"horizon_days\"");
}

}  // namespace
}  // namespace tackfree
