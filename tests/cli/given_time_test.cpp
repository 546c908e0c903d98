#include "tackfree/cli/given_time.hpp"

#include <doctest/doctest.h>

namespace tackfree {
namespace {

Job new_york() {
  Job job;
  job.calendar.zone = Zone::named("America/New_York").value();
  return job;
}

std::optional<Instant> moment(const char* text) {
  Problems problems;
  const auto at =
      moment_given("--at", text, new_york(), parse_instant("2027-04-10T01:20Z").value(), problems);
  CHECK(at.has_value() == problems.empty());
  return at;
}

TEST_CASE("a clock time is of today in the job's zone, or of yesterday") {
  CHECK(moment("20:10") == parse_instant("2027-04-10T00:10Z"));
  CHECK(moment("8:10 pm") == parse_instant("2027-04-10T00:10Z"));
  CHECK(moment("8pm") == parse_instant("2027-04-10T00:00Z"));
  CHECK(moment("12:05 am") == parse_instant("2027-04-09T04:05Z"));
  CHECK(moment("9:30") == parse_instant("2027-04-09T13:30Z"));
  CHECK(moment("yesterday 20:10") == parse_instant("2027-04-09T00:10Z"));
  CHECK(moment("now") == parse_instant("2027-04-10T01:20Z"));
  CHECK(moment("2027-04-09T20:10") == parse_instant("2027-04-10T00:10Z"));
  CHECK(moment("2027-04-09 8:10 pm") == parse_instant("2027-04-10T00:10Z"));
  CHECK(moment("2027-04-10T00:10Z") == parse_instant("2027-04-10T00:10Z"));
}

TEST_CASE("what is no time is a problem, and so is one that the clocks skip") {
  for (const char* text : {"tonight", "25:00", "13:10 pm", "0:10 am", "", "tomorrow 8:00"}) {
    CAPTURE(text);
    CHECK_FALSE(moment(text));
  }
  Problems problems;
  CHECK_FALSE(time_given("--now", "2027-03-14T02:30", new_york(), problems));
  CHECK(problems.at(0).wanted.find("the clocks skip this one") != std::string::npos);
}

TEST_CASE("hours of a day are a day with or without clock times") {
  const Instant now = parse_instant("2027-04-10T01:20Z").value();  // Friday, 9:20 pm
  const auto hours = [&](const HoursTold& told) {
    Problems problems;
    const auto found = hours_given(told, new_york(), now, problems);
    CHECK(found.has_value() == problems.empty());
    return found;
  };
  const auto stretch = [](const char* from, const char* until) {
    return std::optional(Interval{*parse_instant(from), *parse_instant(until)});
  };
  CHECK(hours({"", "", ""}) == stretch("2027-04-09T04:00Z", "2027-04-10T04:00Z"));
  CHECK(hours({"tomorrow", "", "8 pm"}) == stretch("2027-04-10T04:00Z", "2027-04-11T00:00Z"));
  CHECK(hours({"thursday", "20:00", "24:00"}) == stretch("2027-04-16T00:00Z", "2027-04-16T04:00Z"));
  CHECK(hours({"Fri", "22:00", "23:00"}) == stretch("2027-04-10T02:00Z", "2027-04-10T03:00Z"));
  CHECK(hours({"2027-04-15", "", ""}) == stretch("2027-04-15T04:00Z", "2027-04-16T04:00Z"));
  CHECK(hours({"", "", "22:30", true}) == stretch("2027-04-10T01:20Z", "2027-04-10T02:30Z"));
  for (const HoursTold& none :
       {HoursTold{"someday", "", ""}, HoursTold{"", "20:00", "19:00"}, HoursTold{"", "dusk", ""},
        HoursTold{"sunday", "", "20:00", true}, HoursTold{"2099-01-01", "", ""}})
    CHECK_FALSE(hours(none));
}

}  // namespace
}  // namespace tackfree
