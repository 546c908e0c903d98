#include "tackfree/syntax/calendar_lines.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("lines know their name, parameters, value and first line, however they are folded") {
  Problems problems;
  const std::string file = "x.ics";
  CalendarLines reading(
      "\xEF\xBB\xBF"
      "dtstart;tzid=\"A;B:C\";VALUE=DATE-TIME:2027\n 0405\n\nX:a:b;c\r\n",
      file, problems);
  std::vector<CalendarLine> lines(3);
  REQUIRE(reading.next(lines[0]));
  REQUIRE(reading.next(lines[1]));
  CHECK(!reading.next(lines[2]));
  CHECK(problems.empty());
  CHECK(lines[0].name == "DTSTART");
  CHECK(lines[0].parameters.at("TZID") == "A;B:C");
  CHECK(lines[0].value == "20270405");
  CHECK(lines[1].value == "a:b;c");
  CHECK(lines[1].line == 4);
}
