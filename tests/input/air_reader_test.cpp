#include "tackfree/input/air_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const Zone new_york = Zone::named("America/New_York").value();

template <class Read>
auto read_text(const std::string& text, Problems& problems, Read read,
               const Zone& zone = new_york) {
  const auto tree = parse_json(text, "job.json", problems);
  REQUIRE(tree);
  JsonCursor cursor(*tree, "days", "job.json", problems);
  return read(cursor, zone);
}

Problem only_problem_of_days(const std::string& day) {
  Problems problems;
  read_text("{\"origin\": \"a\", \"each\": [" + day + "]}", problems, read_air_days);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  return problems[0];
}

}  // namespace

TEST_CASE("days begin at midnight of standard time, in summer too") {
  Problems problems;
  const AirDays found = read_text(
      R"({"origin": "forecast", "each": [
        {"on": "2027-04-05", "low_c": 4, "high_c": 15, "dew_point_c": 3},
        {"on": "2027-04-06", "low_f": 41, "high_f": 59, "humidity_pct": 70}]})",
      problems, read_air_days);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  REQUIRE(found.days.size() == 2);
  CHECK(found.origin == "forecast");
  CHECK(found.days[0].begins == parse_instant("2027-04-05T05:00Z").value());
  CHECK(found.days[1].range.low.in_celsius() == doctest::Approx(5));
  CHECK(found.days[1].range.humidity == humidity_percent(70));
  CHECK(found.days[1].range.line == 3);
}

TEST_CASE("a day that cannot be is named with its line and remedy") {
  CHECK(holds(
      only_problem_of_days(R"({"on": "2027-04-05", "low_c": 9, "high_c": 4, "dew_point_c": 3})")
          .wanted,
      "no higher than the high"));
  CHECK(holds(
      only_problem_of_days(R"({"on": "2027-04-05", "low_c": 4, "high_c": 9, "dew_point_c": 12})")
          .wanted,
      "dew point no higher than the day's high"));
  CHECK(holds(only_problem_of_days(R"({"on": "2027-04-05", "low_c": 4, "high_c": 9})").wanted,
              "this or humidity_pct is needed"));
  CHECK(holds(
      only_problem_of_days(R"({"on": "2027-04-05", "low_c": 4, "high_c": 9, "humidity_pct": 105})")
          .wanted,
      "1 to 100"));
  const Problem twice = only_problem_of_days(
      "{\"on\": \"2027-04-05\", \"low_c\": 4, \"high_c\": 9, \"humidity_pct\": 80},\n"
      "{\"on\": \"2027-04-05\", \"low_c\": 4, \"high_c\": 9, \"humidity_pct\": 80}");
  CHECK(twice.line == 2);
  CHECK(holds(twice.wanted, "repeats the day before"));
}

TEST_CASE("months are read by name, each once") {
  Problems problems;
  const AirMonths found = read_text(
      R"({"origin": "almanac", "each": [
        {"month": "march", "low_c": 1, "high_c": 9, "humidity_pct": 70},
        {"month": "march", "low_c": 1, "high_c": 9, "humidity_pct": 70},
        {"month": "april", "low_c": 6, "high_c": 15, "dew_point_c": 4}]})",
      problems, read_air_months);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 3);
  CHECK(found.standard_offset == Minutes(-300));
  CHECK(found.months[2].has_value());
  CHECK(found.months[3]->dew_point == celsius(4));
  CHECK_FALSE(found.months[4]);
  const AirMonths south = read_text(R"({"origin": "almanac", "each": []})", problems,
                                    read_air_months, Zone::named("Australia/Sydney").value());
  CHECK(south.standard_offset == Minutes(600));
}
