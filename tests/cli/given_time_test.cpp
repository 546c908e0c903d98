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

}  // namespace
}  // namespace tackfree
