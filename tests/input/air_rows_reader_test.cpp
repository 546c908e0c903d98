#include "tackfree/input/air_rows_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Problems problems_of(const std::string& text, bool local) {
  const AirRowsFormat format{.time_column = "t",
                             .time_is_local = local,
                             .temperature_column = "c",
                             .humidity_column = "rh"};
  Problems problems;
  parse_air_rows(text, "a.csv", format, Zone::named("America/New_York").value(), problems);
  return problems;
}

const Zone eastern = Zone::named("America/New_York").value();

AirRowsFormat utc_format() {
  return {.time_column = "t",
          .temperature_column = "c",
          .dew_point_column = "dew",
          .humidity_column = "rh",
          .replay_in_year = std::nullopt};
}

AirRows read_rows_good(const std::string& text, const AirRowsFormat& format) {
  Problems problems;
  AirRows air = parse_air_rows(text, "a.csv", format, eastern, problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  return air;
}

Problem only_problem_of_rows(const std::string& text, const AirRowsFormat& format) {
  Problems problems;
  parse_air_rows(text, "a.csv", format, eastern, problems);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "a.csv");
  return problems[0];
}

Instant utc(const char* text) { return parse_instant(text).value(); }

}  // namespace

TEST_CASE("humidities that are all shares of one are taken for a wrong unit") {
  const Problems problems =
      problems_of("t,c,rh\n2027-04-05T00:00,5,0.55\n2027-04-05T01:00,5,0.6\n", false);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].key == "rh");
  CHECK(problems[0].line == 2);
  CHECK(holds(problems[0].wanted, "wanted percent"));
  CHECK(problems_of("t,c,rh\n2027-04-05T00:00,5,0.55\n2027-04-05T01:00,5,60\n", false).empty());
}

TEST_CASE("the hour that comes twice in autumn is named, with what to do") {
  const Problems problems = problems_of(
      "t,c,rh\n2027-11-07T00:00,5,50\n2027-11-07T01:00,5,50\n2027-11-07T01:00,5,50\n"
      "2027-11-07T02:00,5,50\n",
      true);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 4);
  CHECK(holds(problems[0].wanted, "comes twice"));
  CHECK(holds(problems[0].hint, "UTC"));
}

TEST_CASE("rows in UTC are read with or without their Z, gaps are left out") {
  const AirRows air = read_rows_good(
      "c,t,rh,dew,wind\n"
      "10,2027-04-05T00:00:00Z,50,,3\n"
      ",2027-04-05T01:00:00Z,50,1,3\n"
      "11,2027-04-05T02:00:00Z,,,3\n"
      "12.5,2027-04-05 03:00,,4.5,3\n",
      utc_format());
  REQUIRE(air.rows.size() == 2);
  CHECK_FALSE(air.recorded_in);
  CHECK(air.rows[0].at == utc("2027-04-05T00:00Z"));
  CHECK(air.rows[0].temperature == celsius(10));
  CHECK(air.rows[0].humidity == humidity_percent(50));
  CHECK_FALSE(air.rows[0].dew_point);
  CHECK(air.rows[1].at == utc("2027-04-05T03:00Z"));
  CHECK(air.rows[1].dew_point == celsius(4.5));
  CHECK(air.rows[1].line == 5);
}

TEST_CASE("rows in Fahrenheit are turned into Celsius, dew point too") {
  AirRowsFormat format = utc_format();
  format.in_fahrenheit = true;
  const AirRows air = read_rows_good("t,c,dew,rh\n2027-04-05T00:00Z,50,41,\n", format);
  CHECK(air.rows[0].temperature.in_celsius() == doctest::Approx(10).epsilon(1e-12));
  CHECK(air.rows[0].dew_point->in_celsius() == doctest::Approx(5).epsilon(1e-12));
}

TEST_CASE("local rows follow the clocks of the zone") {
  AirRowsFormat format = utc_format();
  format.time_is_local = true;
  const AirRows air =
      read_rows_good("t,c,dew,rh\n2027-03-14T01:00,5,,50\n2027-03-14T03:00,5,,50\n", format);
  REQUIRE(air.rows.size() == 2);
  CHECK(air.rows[0].at == utc("2027-03-14T06:00Z"));
  CHECK(air.rows[1].at == utc("2027-03-14T07:00Z"));
  const Problem skipped =
      only_problem_of_rows("t,c,dew,rh\n2027-03-14T01:00,5,,50\n2027-03-14T02:30,5,,50\n", format);
  CHECK(skipped.line == 3);
  CHECK(skipped.found == "2027-03-14T02:30");
  CHECK(holds(skipped.wanted, "the clocks of America/New_York skip it"));
  const Problem repeated =
      only_problem_of_rows("t,c,dew,rh\n2027-11-07T01:00,5,,50\n2027-11-07T01:00,5,,50\n", format);
  CHECK(repeated.line == 3);
  CHECK(holds(repeated.wanted, "comes twice when the clocks of America/New_York go back"));
}

TEST_CASE(
    "replayed rows move by whole years, over a new year too, and say when they were recorded") {
  AirRowsFormat format = utc_format();
  format.replay_in_year = 2027;
  const AirRows air =
      read_rows_good("t,c,dew,rh\n2013-12-31T23:00Z,5,,50\n2014-01-01T00:00Z,5,,50\n", format);
  CHECK(air.recorded_in == 2013);
  CHECK(air.rows[0].at == utc("2027-12-31T23:00Z"));
  CHECK(air.rows[1].at == utc("2028-01-01T00:00Z"));
}

TEST_CASE("a wrong row is named with its line, column, value and remedy") {
  struct Row {
    const char* row;
    const char* key;
    const char* found;
    const char* wanted;
  };
  const Row rows[] = {
      {"yesterday,5,,50", "t", "yesterday", "a time in UTC"},
      {"2027-04-05T00:00Z,warm,,50", "c", "warm", "a number of C from -60 to 60"},
      {"2027-04-05T00:00Z,NA,,50", "c", "NA", "nothing where there is no reading"},
      {"2027-04-05T00:00Z,61,,50", "c", "61", "from -60 to 60"},
      {"2027-04-05T00:00Z,5,5.2,50", "dew", "5.2", "no higher than the temperature"},
      {"2027-04-05T00:00Z,5,,101", "rh", "101", "from 0 to 100"},
      {"2027-04-05T00:00Z,5,,-1", "rh", "-1", "from 0 to 100"},
      {"2027-04-05T00:00Z,5,,nan", "rh", "nan", "from 0 to 100"},
      {"2027-04-04T23:00Z,5,,50", "t", "2027-04-04T23:00Z", "in order of time"},
      {"2027-04-04T23:30Z,5,,50", "t", "2027-04-04T23:30Z", "repeats the row before"},
      {"2038-01-01T00:00Z,5,,50", "t", "2038-01-01T00:00Z", "before the end of 2037"}};
  for (const Row& row : rows) {
    CAPTURE(row.row);
    const Problem problem = only_problem_of_rows(
        std::string("t,c,dew,rh\n2027-04-04T23:30Z,5,,50\n") + row.row + "\n", utc_format());
    CHECK(problem.line == 3);
    CHECK(problem.key == row.key);
    CHECK(problem.found == row.found);
    CHECK(holds(problem.wanted, row.wanted));
  }
}

TEST_CASE("a dew point may be over the temperature by a rounding, not by more") {
  read_rows_good("t,c,dew,rh\n2027-04-05T00:00Z,5,5.09,\n", utc_format());
  only_problem_of_rows("t,c,dew,rh\n2027-04-05T00:00Z,5,5.11,\n", utc_format());
}

TEST_CASE("a column that the job names and the file lacks is named with a likely one") {
  const Problem problem = only_problem_of_rows("t,c,dew_p,rh\n2027-04-05T00:00Z,5,,50\n", [] {
    AirRowsFormat format = utc_format();
    format.dew_point_column = "dew_pt";
    return format;
  }());
  CHECK(problem.line == 1);
  CHECK(problem.key == "dew_pt");
  CHECK(problem.hint == "did you mean \"dew_p\"?");
  CHECK(only_problem_of_rows("t,c,dew,rh\n", utc_format()).wanted ==
        "has no rows; wanted at least one");
}

TEST_CASE("a replayed year goes on through a 29 February that it had, or had not") {
  const auto replayed = [](const std::string& text, int year) {
    const AirRowsFormat format{.time_column = "t",
                               .temperature_column = "c",
                               .humidity_column = "rh",
                               .replay_in_year = year};
    Problems problems;
    AirRows air = parse_air_rows(text, "a.csv", format, Zone::utc(), problems);
    CHECK(problems.empty());
    return air.rows;
  };
  // 2027 has no such day: the 28th is there twice.
  const auto longer = replayed(
      "t,c,rh\n2027-02-27T18:00,1,50\n2027-02-28T06:00,2,50\n2027-02-28T18:00,3,50\n"
      "2027-03-01T06:00,4,50\n",
      2028);
  REQUIRE(longer.size() == 6);
  CHECK(longer[3].at == parse_instant("2028-02-29T06:00:00Z").value());
  CHECK(longer[3].temperature == celsius(2));
  CHECK(longer[4].at == parse_instant("2028-02-29T18:00:00Z").value());
  CHECK(longer[5].at == parse_instant("2028-03-01T06:00:00Z").value());
  // 2024 had it, 2027 does not: its rows are left out.
  const auto shorter = replayed(
      "t,c,rh\n2024-02-28T06:00,2,50\n2024-02-29T06:00,3,50\n2024-03-01T06:00,4,50\n", 2027);
  REQUIRE(shorter.size() == 2);
  CHECK(shorter[1].at == parse_instant("2027-03-01T06:00:00Z").value());
  // A file that ends before March has nothing to fill.
  CHECK(replayed("t,c,rh\n2027-02-28T06:00,2,50\n", 2028).size() == 1);
}
