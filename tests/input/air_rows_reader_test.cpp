#include "tackfree/input/air_rows_reader.hpp"

#include "input/written_files.hpp"
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
