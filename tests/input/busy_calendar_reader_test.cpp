#include "tackfree/input/busy_calendar_reader.hpp"

#include <set>

#include "input/text_checks.hpp"
#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace tackfree;

namespace {

std::string in_calendar(const std::string& lines) {
  return "BEGIN:VCALENDAR\r\nVERSION:2.0\r\n" + lines + "END:VCALENDAR\r\n";
}

std::string in_event(const std::string& lines) {
  return in_calendar("BEGIN:VEVENT\r\nUID:a\r\n" + lines + "END:VEVENT\r\n");
}

std::vector<BusyEvent> good(const std::string& text) {
  Problems problems;
  auto events = busy_events(text, "mine.ics", Zone::named("Europe/Berlin").value(), problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  return events;
}

Problem only_mistake(const std::string& text) {
  Problems problems;
  const auto events = busy_events(text, "mine.ics", Zone::utc(), problems);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "mine.ics");
  return problems[0];
}

}  // namespace

TEST_CASE("times have the zone they name, days and floating times the job's") {
  const auto zoned =
      good(in_event("DTSTART;TZID=America/New_York:20270405T183000\r\n"
                    "DTEND:20270405T233000Z\r\n"));
  REQUIRE(zoned.size() == 1);
  CHECK(zoned[0].zone.name() == "America/New_York");
  CHECK(zoned[0].longer == Minutes(60));
  const auto floating = good(in_event("DTSTART:20270405T183000\r\nDURATION:P1DT30M\r\n"));
  CHECK(floating[0].zone.name() == "Europe/Berlin");
  CHECK(floating[0].days == 1);
  CHECK(floating[0].longer == Minutes(30));
  const auto day = good(in_event("DTSTART;VALUE=DATE:20270405\r\n"));
  CHECK(day[0].days == 1);
  const auto holiday =
      good(in_event("DTSTART;VALUE=DATE:20271030\r\nDTEND;VALUE=DATE:20271102\r\n"));
  CHECK(holiday[0].days == 3);
  CHECK(holiday[0].longer == Minutes(0));
}

TEST_CASE("a zone is known behind a prefix, by its place, and by its name in Windows") {
  for (const char* tzid : {"/freeassociation.sourceforge.net/Europe/Paris", "Romance Standard Time",
                           "\"Europe/Paris\""})
    CHECK(good(in_event(std::string("DTSTART;TZID=") + tzid + ":20270405T183000\r\n"))
              .front()
              .zone.name() == "Europe/Paris");
  const auto placed = good(in_calendar(
      "BEGIN:VEVENT\r\nDTSTART;TZID=Mine:20270405T183000\r\nEND:VEVENT\r\n"
      "BEGIN:VTIMEZONE\r\nTZID:Mine\r\nX-LIC-LOCATION:Asia/Tokyo\r\nEND:VTIMEZONE\r\n"));
  CHECK(placed.front().zone.name() == "Asia/Tokyo");
  const Problem unknown = only_mistake(in_event("DTSTART;TZID=Nowhere:20270405T183000\r\n"));
  CHECK(unknown.line == 5);
  CHECK(unknown.found == "Nowhere");
}

TEST_CASE("what is free or cancelled keeps nobody busy, a tentative event does") {
  CHECK(good(in_event("DTSTART:20270405T183000Z\r\nTRANSP:TRANSPARENT\r\n")).empty());
  CHECK(good(in_event("DTSTART:20270405T183000Z\r\nSTATUS:CANCELLED\r\n")).empty());
  CHECK(good(in_event("DTSTART:20270405T183000Z\r\nSTATUS:TENTATIVE\r\n")).size() == 1);
}

TEST_CASE("a moved instance takes the place of the original, a cancelled one frees it") {
  const std::string weekly =
      "BEGIN:VEVENT\r\nUID:w\r\nDTSTART:20270405T183000Z\r\nDURATION:PT1H\r\n"
      "RRULE:FREQ=WEEKLY\r\nEXDATE:20270503T183000Z,20270510T183000Z\r\nEND:VEVENT\r\n";
  const auto events = good(in_calendar(
      "BEGIN:VEVENT\r\nUID:w\r\nRECURRENCE-ID:20270412T183000Z\r\nDTSTART:20270413T090000Z\r\n"
      "DURATION:PT1H\r\nEND:VEVENT\r\n" +
      weekly +
      "BEGIN:VEVENT\r\nUID:w\r\nRECURRENCE-ID:20270419T183000Z\r\nDTSTART:20270419T183000Z\r\n"
      "STATUS:CANCELLED\r\nEND:VEVENT\r\n"));
  REQUIRE(events.size() == 2);
  CHECK(!events[0].moved);
  REQUIRE(events[1].moved);
  CHECK(events[1].left_out.at.size() + events[1].moved->at.size() == 4);
  CHECK(iso_utc(events[1].moved->at[0]) == "2027-04-12T18:30:00Z");
  CHECK(iso_utc(events[1].left_out.at[1]) == "2027-05-10T18:30:00Z");
}

TEST_CASE("folded lines are joined, quoted parameters may hold colons, and RDATE adds the same") {
  const auto events =
      good(in_event("SUMMARY;X-A=\"a;b:c\":something\r\nDTSTART:2027\r\n 0405T18\r\n"
                    "\t3000Z\r\nDURATION:PT1H\r\nRDATE:20270407T100000Z\r\n"));
  REQUIRE(events.size() == 1);
  CHECK(events[0].begin.minute_of_day == 18 * 60 + 30);
  REQUIRE(events[0].also.size() == 1);
  CHECK(events[0].also[0].at.minute_of_day == 600);
  CHECK(events[0].longer == Minutes(60));
}

// Once each exception was copied to each added time: 20,000 of both took 7.8 GB.
TEST_CASE("what is kept of a calendar grows with its lines, not with their product") {
  std::string both, of_one;
  for (int i = 0; i < 1'000; ++i) {
    const std::string at =
        fmt::format("202704{:02}T{:02}{:02}00Z\r\n", 1 + i / 60 % 28, i / 60 % 24, i % 60);
    both += "RDATE:" + at + "EXDATE:" + at;
    of_one += "BEGIN:VEVENT\r\nUID:a\r\nDTSTART:" + at + (i % 2 == 0 ? "RECURRENCE-ID:" + at : "") +
              "END:VEVENT\r\n";
  }
  const auto added = good(in_event("DTSTART:20270401T000000Z\r\n" + both));
  REQUIRE(added.size() == 1);
  CHECK(added[0].also.size() == 1'000);
  CHECK(added[0].left_out.at.size() == 1'000);
  std::size_t own = 0;
  std::set<const LeftOut*> lists;
  const auto events = good(in_calendar(of_one));
  for (const BusyEvent& event : events) {
    own += event.left_out.at.size();
    if (event.moved) lists.insert(event.moved.get());
  }
  CHECK(own == 0);
  REQUIRE(lists.size() == 1);
  CHECK((*lists.begin())->at.size() == 500);
}

TEST_CASE("no time of an RDATE is passed over in silence: too many are refused") {
  std::string many = "RDATE:20270401T000000Z";
  for (int i = 0; i < 10'000; ++i) many += ",20270401T000000Z";
  std::string lines = "DTSTART:20270401T000000Z\r\n";
  for (int i = 0; i < 10; ++i) lines += many + "\r\n";
  CHECK(holds(only_mistake(in_event(lines)).wanted, "at most 100000 times in RDATE"));
}

TEST_CASE("what cannot be read surely is named with its line") {
  struct Case {
    std::string text;
    int line;
    const char* wanted;
  };
  const std::string start = "DTSTART:20270405T183000Z\r\n";
  const Case cases[] = {
      {in_event(start + "RRULE:FREQ=SECONDLY\r\n"), 6, "FREQ to be DAILY"},
      {in_event(start + "RRULE:FREQ=DAILY;BYHOUR=3\r\n"), 6, "without BYHOUR"},
      {in_event(start + "RRULE:FREQ=DAILY;COUNT=3;UNTIL=20270501\r\n"), 6, "not both"},
      {in_event(start + "RRULE:FREQ=WEEKLY;BYDAY=2MO\r\n"), 6, "BYDAY without numbers"},
      {in_event(start + "RRULE:FREQ=YEARLY;BYDAY=MO\r\n"), 6, "BYMONTH beside BYDAY"},
      {in_event(start + "RRULE:FREQ=MONTHLY;BYMONTHDAY=32\r\n"), 6, "value for BYMONTHDAY"},
      {in_event(start + "RRULE:FREQ=DAILY;INTERVAL=0\r\n"), 6, "value for INTERVAL"},
      {in_event(start + "RRULE:COUNT=2\r\n"), 6, "wanted FREQ"},
      {in_event(start + "RRULE:FREQ=DAILY\r\nRRULE:FREQ=DAILY\r\n"), 7, "one RRULE"},
      {in_event("DTSTART:20270230T183000Z\r\n"), 5, "wanted a date or a time"},
      {in_event("DTSTART:20270405T240000Z\r\n"), 5, "wanted a date or a time"},
      {in_event("DTSTART:99999999T999999Z\r\n"), 5, "wanted a date or a time"},
      {in_event(start + "DTEND:20270405T173000Z\r\n"), 6, "wanted an end after"},
      {in_event(start + "DURATION:-PT1H\r\n"), 6, "wanted a duration"},
      {in_event(start + "RECURRENCE-ID;RANGE=THISANDFUTURE:20270405T183000Z\r\n"), 6, "one by one"},
      {in_event("SUMMARY:no begin\r\n"), 3, "wanted a DTSTART"},
      {"hello\r\n", 1, "a line of an iCalendar file"},
      {"A:b\r\n", 1, "begins with BEGIN:VCALENDAR"},
      {"BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n", 2, "cut off"},
      {"BEGIN:VCALENDAR\r\nEND:VEVENT\r\n", 2, "begun last"},
      {std::string("BEGIN:VCALENDAR\r\nX:a\0b\r\n", 24), 2, "zero"},
      {"BEGIN:VCALENDAR\r\nX:" + std::string(300'000, 'a'), 2, "at most 256 KiB"},
      {std::string((17U << 20), '\n'), 0, "at most 16 MiB"},
  };
  for (const Case& each : cases) {
    CAPTURE(each.wanted);
    const Problem problem = only_mistake(each.text);
    CHECK(problem.line == each.line);
    CHECK(holds(problem.wanted, each.wanted));
  }
}

TEST_CASE("a file made to exhaust is refused, not followed") {
  std::string deep;
  for (int i = 0; i < 400'000; ++i) deep += "BEGIN:VEVENT\r\n";
  CHECK(holds(only_mistake("BEGIN:VCALENDAR\r\n" + deep).wanted, "nested"));
  std::string many, repeating, broken;
  const std::string single = "BEGIN:VEVENT\r\nDTSTART:20270405\r\nEND:VEVENT\r\n";
  for (int i = 0; i < 20'000; ++i) many += single;
  CHECK(good(in_calendar(many)).size() == 20'000);
  const Problem one_more = only_mistake(in_calendar(many + single));
  CHECK(one_more.wanted == "wanted at most 20000 events");
  CHECK(one_more.hint == "export a shorter stretch of the calendar");
  const std::string daily =
      "BEGIN:VEVENT\r\nDTSTART:20270405\r\nRRULE:FREQ=DAILY\r\nEND:VEVENT\r\n";
  for (int i = 0; i < 2'000; ++i) repeating += daily;
  CHECK(good(in_calendar(repeating)).size() == 2'000);
  const Problem one_more_rule = only_mistake(in_calendar(repeating + daily));
  CHECK(one_more_rule.wanted == "wanted at most 2000 repeating events");
  CHECK(one_more_rule.hint == one_more.hint);
  for (int i = 0; i < 1'000; ++i) broken += "BEGIN:VEVENT\r\nDTSTART:never\r\nEND:VEVENT\r\n";
  Problems problems;
  CHECK(busy_events(in_calendar(broken), "x.ics", Zone::utc(), problems).size() <= 20);
  CHECK(problems.size() == 20);
}
