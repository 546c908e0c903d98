#include "tackfree/schedule/work_time.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

WorkCalendar evenings(const char* zone) {
  WorkCalendar calendar;
  calendar.zone = Zone::named(zone).value();
  for (auto& day : calendar.weekly) day = {{18 * 60, 21 * 60}};
  return calendar;
}

Interval span_of(const char* from, const char* to) {
  return {testing::instant(from), testing::instant(to)};
}

TEST_CASE("working hours are local, whatever the offset of the day") {
  // IANA data: New York leaves summer time on 2026-11-01, when 22:00Z becomes 23:00Z for 18:00.
  const auto hours = working_hours(evenings("America/New_York"),
                                   span_of("2026-10-31T12:00Z", "2026-11-02T12:00Z"));
  REQUIRE(hours.size() == 2);
  CHECK(iso_utc(hours[0].begin) == "2026-10-31T22:00:00Z");
  CHECK(iso_utc(hours[1].begin) == "2026-11-01T23:00:00Z");
}

TEST_CASE("a window over the hour that clocks skip or repeat is shorter or longer by it") {
  WorkCalendar calendar;
  calendar.zone = Zone::named("Europe/Berlin").value();
  for (auto& day : calendar.weekly) day = {{1 * 60, 5 * 60}};
  // IANA data: Berlin skips 02:00 to 03:00 on 2026-03-29 and repeats it on 2026-10-25.
  const auto spring = working_hours(calendar, span_of("2026-03-28T12:00Z", "2026-03-29T12:00Z"));
  const auto autumn = working_hours(calendar, span_of("2026-10-24T12:00Z", "2026-10-25T12:00Z"));
  CHECK(spring.at(0).length() == Minutes(180));
  CHECK(autumn.at(0).length() == Minutes(300));
}

TEST_CASE("days off have no hours, added hours come on top, touching windows are one") {
  WorkCalendar calendar = evenings("Etc/UTC");
  calendar.days_off = {parse_date("2027-04-06").value()};
  calendar.added = {{parse_date("2027-04-06").value(), {{9 * 60, 12 * 60}}},
                    {parse_date("2027-04-07").value(), {{21 * 60, 22 * 60}}}};
  const auto hours = working_hours(calendar, span_of("2027-04-06T00:00Z", "2027-04-08T00:00Z"));
  REQUIRE(hours.size() == 2);
  CHECK(hours[0] == span_of("2027-04-06T09:00Z", "2027-04-06T12:00Z"));
  CHECK(hours[1] == span_of("2027-04-07T18:00Z", "2027-04-07T22:00Z"));
}

TEST_CASE("hours are cut at the plan's now and end, and night windows join at midnight") {
  const WorkCalendar calendar = evenings("Etc/UTC");
  const auto cut = working_hours(calendar, span_of("2027-04-06T19:10Z", "2027-04-07T18:30Z"));
  REQUIRE(cut.size() == 2);
  CHECK(cut[0].begin == testing::instant("2027-04-06T19:10Z"));
  CHECK(cut[1].end == testing::instant("2027-04-07T18:30Z"));
  const auto nights = daily_hours(calendar, {{0, 8 * 60}, {20 * 60, 24 * 60}},
                                  span_of("2027-04-06T12:00Z", "2027-04-07T12:00Z"));
  REQUIRE(nights.size() == 1);
  CHECK(nights[0] == span_of("2027-04-06T20:00Z", "2027-04-07T08:00Z"));
}

}  // namespace
}  // namespace tackfree
