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
