#include "tackfree/input/calendar_reader.hpp"

#include <string>
#include <utility>

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

WorkCalendar calendar_of(const std::string& text, Problems& problems,
                         const FilesInMemory& in_memory = {}) {
  const auto tree = parse_json(text, "x.json", problems);
  REQUIRE(tree);
  JsonCursor cursor(*tree, "calendar", "x.json", problems);
  NamedFiles files(in_memory, "");
  return read_calendar(cursor, Zone::utc(), files);
}

}  // namespace

TEST_CASE("hours are put in order, and quiet hours over midnight become two stretches") {
  Problems problems;
  const WorkCalendar calendar = calendar_of(
      R"({"weekly": {"sun": ["13:00-18:00", "9:00-12:00", "12:00-13:00", "23:00-24:00"]},
          "no_power_sanding": ["20:00-08:00", "12:00-14:00"]})",
      problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  CHECK(calendar.weekly[6] ==
        std::vector<DayWindow>{{540, 720}, {720, 780}, {780, 1080}, {1380, 1440}});
  CHECK(calendar.no_power_sanding == std::vector<DayWindow>{{0, 480}, {720, 840}, {1200, 1440}});
  CHECK(calendar.late_after == 21 * 60);
}

TEST_CASE("quiet hours that begin or end at midnight are one stretch") {
  Problems problems;
  CHECK(calendar_of(R"({"weekly": {"sat": ["09:00-12:00"]}, "no_power_sanding": ["20:00-00:00"]})",
                    problems)
            .no_power_sanding == std::vector<DayWindow>{{1200, 1440}});
  CHECK(calendar_of(R"({"weekly": {"sat": ["09:00-12:00"]}, "no_power_sanding": ["24:00-08:00"]})",
                    problems)
            .no_power_sanding == std::vector<DayWindow>{{0, 480}});
  CHECK_MESSAGE(problems.empty(), all_text(problems));
}

TEST_CASE("overlapping and empty hours are refused, also across midnight") {
  for (const char* hours : {R"(["09:00-12:00", "11:59-13:00"])", R"(["09:00-09:00"])",
                            R"(["20:00-08:00", "07:00-09:00"])", R"(["9-12"])", R"([9])"}) {
    CAPTURE(hours);
    Problems problems;
    calendar_of(
        std::string(R"({"weekly": {"sat": ["09:00-12:00"]}, "no_power_sanding": )") + hours + "}",
        problems);
    REQUIRE(problems.size() == 1);
    CHECK(holds(problems[0].key, "calendar.no_power_sanding"));
  }
}

TEST_CASE("added hours alone are working hours") {
  Problems problems;
  const WorkCalendar calendar =
      calendar_of(R"({"added": [{"on": "2027-04-09", "hours": ["09:00-12:00"]}]})", problems);
  CHECK(problems.empty());
  CHECK(calendar.added.at(0).on == parse_date("2027-04-09"));
}

TEST_CASE("dates are taken from 1970 to 2037, where the time zone rules end") {
  CHECK(parse_planning_date("1970-01-01"));
  CHECK(parse_planning_date("2037-12-31"));
  CHECK_FALSE(parse_planning_date("1969-12-31"));
  CHECK_FALSE(parse_planning_date("2038-01-01"));
  CHECK_FALSE(parse_planning_date("2027-02-29"));
}

TEST_CASE("the files of one person together are held to the limits of one") {
  const auto events = [](int count, const std::string& rule) {
    std::string text = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\n";
    for (int i = 0; i < count; ++i)
      text += "BEGIN:VEVENT\r\nDTSTART:20270405\r\n" + rule + "END:VEVENT\r\n";
    return text + "END:VCALENDAR\r\n";
  };
  const std::string text =
      R"({"weekly": {"sat": ["09:00-12:00"]}, "busy_files": ["a.ics", "b.ics"]})";
  for (const auto& [most, rule] :
       {std::pair(20'000, std::string()), std::pair(2'000, std::string("RRULE:FREQ=DAILY\r\n"))}) {
    const std::string half = events(most / 2, rule), over = events(most / 2 + 1, rule);
    FilesInMemory files;
    files.put("a.ics", half);
    files.put("b.ics", half);
    Problems problems;
    CHECK(calendar_of(text, problems, files).busy.size() == static_cast<std::size_t>(most));
    CHECK_MESSAGE(problems.empty(), all_text(problems));
    files.put("b.ics", over);
    calendar_of(text, problems, files);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].wanted ==
          "wanted at most 20000 events, and 2000 repeating ones, in all busy files of one person");
    CHECK(problems[0].hint == "export a shorter stretch of the calendars");
  }
}
