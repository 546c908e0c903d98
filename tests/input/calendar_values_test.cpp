#include "tackfree/input/calendar_values.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

// Durations: RFC 5545, 3.3.6, its examples among them.
TEST_CASE("durations of weeks, days and clock time are read, and nothing else") {
  CHECK(parse_calendar_duration("P7W")->days == 49);
  const auto mixed = parse_calendar_duration("P15DT5H0M20S");
  REQUIRE(mixed);
  CHECK(mixed->days == 15);
  CHECK(mixed->longer == Minutes(301));
  for (const char* bad :
       {"", "P", "PT", "1D", "-P1D", "P1H", "PT1D", "PT99999999999S", "P40000D", "PTT1H", "P1.5D"})
    CHECK_MESSAGE(!parse_calendar_duration(bad), bad);
}

TEST_CASE("a time is local, or UTC with a Z, and must exist") {
  CHECK(parse_calendar_time("20270405T183000Z")->utc);
  CHECK_FALSE(parse_calendar_time("20270405T183000")->utc);
  CHECK_FALSE(parse_calendar_time("20270405")->has_clock);
  for (const char* bad : {"2027040", "20271301", "20270229", "20270405T246000", "20270405X183000",
                          "20270405T183000X", "00010101", "2027-405"})
    CHECK_MESSAGE(!parse_calendar_time(bad), bad);
}

TEST_CASE("an end in the far future is no end, one on a day is of the event's zone") {
  std::string wrong;
  CHECK_FALSE(parse_recurrence("FREQ=DAILY;UNTIL=99991231T000000Z", Zone::utc(), wrong)->until);
  const auto rule =
      parse_recurrence("FREQ=MONTHLY;BYDAY=-1FR,2MO;UNTIL=20271231", Zone::utc(), wrong);
  REQUIRE(rule);
  CHECK(rule->until_day == parse_date("2027-12-31"));
  CHECK(rule->weekdays[0].nth == -1);
  CHECK(rule->weekdays[1].weekday == 0);
  const auto at = parse_recurrence("FREQ=DAILY;UNTIL=20270701T000000",
                                   Zone::named("America/New_York").value(), wrong);
  CHECK(iso_utc(*at->until) == "2027-07-01T04:00:00Z");
}
