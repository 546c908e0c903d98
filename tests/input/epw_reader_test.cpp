#include "tackfree/input/epw_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// Source of the header's form and of the first two rows: the EnergyPlus data dictionary and a
/// public typical year of Golden, Colorado, cut to two hours.
const std::string header =
    "LOCATION,Golden,CO,USA,TMY3,724666,39.74,-105.18,-7.0,1829.0\n"
    "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\n"
    "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,-\nCOMMENTS 2,-\n"
    "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";
const std::string tail =
    ",80600,0,0,257,0,0,0,0,0,0,0,0,0.0,9,8,16.1,3300,9,999999999,89,0.0310,0,88,0.330,999.0,99."
    "0\n";

std::string hour(const std::string& date, const std::string& air) {
  return date + ",0,?9?9," + air + tail;
}

const std::string first = hour("1999,1,1,1", "-3.0,-4.0,92");
const std::string second = hour("1999,1,1,2", "-3.0,-6.0,77");

std::vector<AirRow> read_epw_good(const std::string& text, int year = 2027) {
  Problems problems;
  auto rows = parse_epw(text, "a.epw", year, problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  return rows;
}

Problem only_epw_problem(const std::string& text) {
  Problems problems;
  parse_epw(text, "a.epw", 2027, problems);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "a.epw");
  return problems[0];
}

Instant at(const char* text) { return parse_instant(text).value(); }

}  // namespace

TEST_CASE("hours of a weather file stand in its own standard time, in the year asked") {
  const auto rows = read_epw_good(header + first + second);
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].at == at("2027-01-01T08:00Z"));
  CHECK(rows[1].at == at("2027-01-01T09:00Z"));
  CHECK(rows[0].temperature == celsius(-3));
  CHECK(rows[0].dew_point == celsius(-4));
  CHECK(rows[0].humidity == humidity_percent(92));
  CHECK(rows[0].line == 9);
}

TEST_CASE("a whole year is followed by itself, so that a plan may cross the new year") {
  const auto rows = read_epw_good(header + first + hour("1999,12,31,24", "1.0,0.0,93"));
  REQUIRE(rows.size() == 4);
  CHECK(rows[1].at == at("2028-01-01T07:00Z"));
  CHECK(rows[2].at == at("2028-01-01T08:00Z"));
}

TEST_CASE("years of a typical file may differ, and missing values are gaps") {
  const auto rows =
      read_epw_good(header + hour("1999,1,1,1", "99.9,99.9,999") +
                    hour("2003,2,1,24", "5.0,99.9,80") + hour("1988,3,1,1", "6,1.0,999"));
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].at == at("2027-02-02T07:00Z"));
  CHECK_FALSE(rows[0].dew_point);
  CHECK(rows[1].dew_point == celsius(1));
  CHECK_FALSE(rows[1].humidity);
}

TEST_CASE("a leap year repeats the 28th of February where the file lacks the 29th") {
  const auto rows = read_epw_good(header + hour("1999,2,28,23", "5,1,70") +
                                      hour("1999,2,28,24", "4,1,70") + hour("1999,3,1,1", "3,1,70"),
                                  2028);
  REQUIRE(rows.size() == 5);
  CHECK(rows[2].at == at("2028-03-01T06:00Z"));
  CHECK(rows[2].temperature == celsius(5));
  CHECK(rows[4].at == at("2028-03-01T08:00Z"));
}

TEST_CASE("a cut row, a wrong number, hours out of order and a missing header are named by line") {
  const Problem cut = only_epw_problem(header + first + "1999,1,1,2,0,?9,-3.0,-6.0,77,80600\n");
  CHECK(cut.line == 10);
  CHECK(cut.found == "10 fields");
  CHECK(holds(cut.wanted, "wanted 35"));
  // One field short of the 35, as by a lost comma.
  const std::string short_tail = first.substr(0, first.rfind(',')) + "\n";
  CHECK(only_epw_problem(header + short_tail).found == "34 fields");
  CHECK(only_epw_problem(header + short_tail).line == 9);
  const Problem wrong = only_epw_problem(header + hour("1999,1,1,1", "cold,-4.0,92"));
  CHECK(wrong.line == 9);
  CHECK(wrong.key == "dry bulb");
  CHECK(holds(wrong.wanted, "99.9 where it is missing"));
  CHECK(only_epw_problem(header + hour("1999,1,1,1", "-3.0,2.0,92")).key == "dew point");
  CHECK(holds(only_epw_problem(header + first + first).wanted, "hours in order, each once"));
  CHECK(only_epw_problem(header + first + first).line == 10);
  CHECK(only_epw_problem(header + hour("1999,2,30,1", "1,0,92")).line == 9);
  CHECK(only_epw_problem(first).key == "LOCATION");
  CHECK(only_epw_problem(header.substr(0, header.find("COMMENTS 2")) + first).key ==
        "DATA PERIODS");
  CHECK(holds(only_epw_problem(header).wanted, "no hours"));
}

TEST_CASE("what is no number, no whole number or no day of a weather file is one mistake") {
  // Month 263 is 7 in eight bits, a fraction is none, and a cast of the others is undefined.
  for (const char* date :
       {"1999,263,1,1", "1999,-1,1,1", "1999,nan,1,1", "1999,1e40,1,1", "1999,1.9,1,1", "1999,,1,1",
        "1999,1,257,1", "1999,1,nan,1", "1999,1,-1e300,1", "1999,1,1,0", "1999,1,1,25",
        "1999,1,1,inf", "1999,1,1,1.5", "1999,1,1,4444444444444444444444"}) {
    CAPTURE(date);
    const Problem wrong = only_epw_problem(header + first + hour(date, "1,0,92"));
    CHECK(wrong.line == 10);
    CHECK(holds(wrong.wanted, "a month, a day and an hour"));
  }
  for (const char* zone : {"nan", "-nan", "inf", "1e40", "15.1", ""}) {
    CAPTURE(zone);
    const Problem wrong = only_epw_problem(replaced(header, "-7.0", zone) + first);
    CHECK(wrong.line == 1);
    CHECK(wrong.key == "time zone");
  }
  for (const char* air : {"nan,-4.0,92", "-3.0,inf,92", "-3.0,-4.0,nan", "1e400,-4.0,92"}) {
    CAPTURE(air);
    CHECK(only_epw_problem(header + hour("1999,1,1,1", air)).line == 9);
  }
}
