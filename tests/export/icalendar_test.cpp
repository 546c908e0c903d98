#include "tackfree/export/icalendar.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "export/calendar_text.hpp"
#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("no name can end a line or start a property") {
  const std::string hostile = hostile_name();
  const std::string calendar = calendar_report(small_plan({hostile, hostile, hostile, hostile}));
  for (const std::string& line : lines_of(calendar)) {
    CHECK(line.size() <= 75);
    CHECK(std::none_of(line.begin(), line.end(), [](char c) {
      const auto byte = static_cast<unsigned char>(c);
      return byte < 0x20 || byte == 0x7F;
    }));
  }
  CHECK(values(calendar, "UID").size() == 5);
  CHECK(values(calendar, "END").size() == 5 + values(calendar, "TRIGGER").size() + 1);
}

TEST_CASE("there is one event for each session of work and each batch that is ready or cured") {
  const std::string calendar = calendar_report(small_plan());
  const auto uids = values(calendar, "UID");
  CHECK(uids.size() == 3 + 2);
  CHECK(std::set(uids.begin(), uids.end()).size() == uids.size());
  CHECK(uids[1] == "seat.varnish.coat-1.back.coat.session.hall-bench@tackfree.invalid");
  CHECK(values(calendar, "SUMMARY") ==
        std::vector<std::string>{"Sand: seat", "Coat 1: seat (back)\\, legs\\; sand: seat",
                                 "Turn over: seat", "Ready for light use: legs",
                                 "Fully cured: legs"});
}

TEST_CASE("batches whose keys fall together still have their own events") {
  Plan plan = small_plan();
  for (Operation& work : plan.list.operations) work.key = "seat";
  const auto uids = values(calendar_report(plan), "UID");
  CHECK(uids.size() == 5);
  CHECK(std::set(uids.begin(), uids.end()).size() == uids.size());
}

TEST_CASE("a session lasts from its first minute to the end of its clean-up") {
  const std::string calendar = calendar_report(small_plan());
  CHECK(values(calendar, "DTSTART")[1] == "20270410T130000Z");
  CHECK(values(calendar, "DTEND")[1] == "20270410T153000Z");
}

TEST_CASE("work after now has one alarm, work under way and what is ready have none") {
  Plan plan = small_plan();
  CHECK(values(calendar_report(plan), "TRIGGER") ==
        std::vector<std::string>{"-PT30M", "-PT30M"});  // the first session starts now
  plan.now = at("2027-04-10T14:20:00Z");
  CHECK(values(calendar_report(plan), "TRIGGER").size() == 1);
  CHECK(values(calendar_report(plan), "TRANSP") ==
        std::vector<std::string>{"OPAQUE", "OPAQUE", "TRANSPARENT", "TRANSPARENT"});
}

TEST_CASE("the calendar is stamped with the plan's now and has no method") {
  const std::string calendar = calendar_report(small_plan());
  for (const std::string& stamp : values(calendar, "DTSTAMP")) CHECK(stamp == "20270409T210000Z");
  CHECK(values(calendar, "METHOD").empty());
  CHECK(values(calendar, "VERSION") == std::vector<std::string>{"2.0"});
  CHECK(calendar == calendar_report(small_plan()));
}

TEST_CASE("a step of no length makes no event") {
  Plan plan = small_plan();
  plan.schedule.steps[3].pieces[0].end = plan.schedule.steps[3].pieces[0].begin;
  CHECK(values(calendar_report(plan), "UID").size() == 4);
}

TEST_CASE("closing up is an event that rings on its minute and takes up no time") {
  const std::string calendar = calendar_report(judged_plan());
  const std::vector<std::string> all = unfolded(calendar);
  const auto uid =
      std::find(all.begin(), all.end(),
                "UID:seat.varnish.coat-1.back.coat.close-up.hall-bench@tackfree.invalid");
  REQUIRE(uid != all.end());
  const std::vector<std::string> event(uid, std::find(uid, all.end(), "END:VEVENT"));
  const auto has = [&](const std::string& line) {
    return std::find(event.begin(), event.end(), line) != event.end();
  };
  CHECK(has("DTSTART:20270410T201000Z"));
  CHECK(has("SUMMARY:Close up: the airing is over"));
  CHECK(has("TRANSP:TRANSPARENT"));
  CHECK(has("TRIGGER:PT0S"));
}

TEST_CASE("nothing that is over by the plan's now is in the calendar") {
  Plan plan = small_plan();
  plan.now = at("2027-04-10T14:20:00Z");
  for (const std::string& end : values(calendar_report(plan), "DTEND"))
    CHECK(end > "20270410T142000Z");
}
