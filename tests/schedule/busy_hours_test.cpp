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
  weekly.not_at = {testing::instant("2027-04-13T03:00Z")};
  const auto hours = busy_hours(
      {weekly}, {testing::instant("2027-04-06T05:00Z"), testing::instant("2027-04-21T00:00Z")});
  REQUIRE(hours.size() == 2);
  CHECK(iso_utc(hours[0].begin) == "2027-04-06T05:00:00Z");
  CHECK(iso_utc(hours[0].end) == "2027-04-06T06:00:00Z");
  CHECK(iso_utc(hours[1].begin) == "2027-04-20T03:00:00Z");
}

}  // namespace
}  // namespace tackfree
