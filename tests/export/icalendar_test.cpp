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
  CHECK(values(calendar, "UID").size() == 8);
  CHECK(values(calendar, "END").size() == 8 + values(calendar, "TRIGGER").size() + 1);
}

TEST_CASE(
    "there is one event for each piece of a step, each wait that ends and each milestone reached") {
  const std::string calendar = calendar_report(small_plan());
  const auto uids = values(calendar, "UID");
  CHECK(uids.size() == 5 + 1 + 2);
  CHECK(std::set(uids.begin(), uids.end()).size() == uids.size());
  CHECK(uids[0] == "seat.varnish.bare.both.sand-p120.hall-bench@tackfree.invalid");
  CHECK(uids[1] == "seat.varnish.bare.both.sand-p120.2.hall-bench@tackfree.invalid");
}

TEST_CASE("batches whose keys fall together still have their own events") {
  Plan plan = small_plan();
  plan.list.operations[2].key = plan.list.operations[1].key;
  const auto uids = values(calendar_report(plan), "UID");
  CHECK(std::set(uids.begin(), uids.end()).size() == uids.size());
}

TEST_CASE("set-up and clean-up belong to the first and the last coat of their session") {
  const std::string calendar = calendar_report(small_plan());
  const auto begins = values(calendar, "DTSTART");
  const auto ends = values(calendar, "DTEND");
  CHECK(begins[2] == "20270410T140000Z");
  CHECK(ends[2] == "20270410T144000Z");
  CHECK(begins[3] == "20270410T144000Z");
  CHECK(ends[3] == "20270410T153000Z");
  for (std::size_t i = 0; i < begins.size(); ++i) CHECK(begins[i] < ends[i]);
}

TEST_CASE("work after now has an alarm, work under way and milestones have none") {
  Plan plan = small_plan();
  plan.course.drying.clear();
  CHECK(values(calendar_report(plan), "TRIGGER").size() == 4);  // the first piece starts now
  plan.now = at("2027-04-10T14:20:00Z");
  CHECK(values(calendar_report(plan, Feed::work), "TRIGGER").size() == 2);
  CHECK(values(calendar_report(plan, Feed::waits), "TRANSP") ==
        std::vector<std::string>{"TRANSPARENT", "TRANSPARENT"});
}

TEST_CASE("the calendar is stamped with the plan's now and has no method") {
  const std::string calendar = calendar_report(small_plan());
  for (const std::string& stamp : values(calendar, "DTSTAMP")) CHECK(stamp == "20270409T210000Z");
  CHECK(values(calendar, "METHOD").empty());
  CHECK(values(calendar, "VERSION") == std::vector<std::string>{"2.0"});
  CHECK(calendar == calendar_report(small_plan()));
}

TEST_CASE("a coat's event says what to pour, how, and which cautions there are") {
  const auto texts = values(calendar_report(small_plan()), "DESCRIPTION");
  const auto coat = std::find_if(texts.begin(), texts.end(),
                                 [](const std::string& text) { return text.starts_with("Pour"); });
  REQUIRE(coat != texts.end());
  CHECK(coat->find("Thin only what goes into the pot.\\n") != std::string::npos);
  CHECK(coat->find("WARNING: Rags heat themselves.\\n") != std::string::npos);
  CHECK(coat->ends_with("The product's label and safety data sheet govern."));
}

TEST_CASE("a step of no length makes no event") {
  Plan plan = small_plan();
  plan.schedule.steps[3].pieces[0].end = plan.schedule.steps[3].pieces[0].begin;
  CHECK(values(calendar_report(plan), "UID").size() == 7);
}

TEST_CASE("an airing is an event of its own, known by its first coat, that takes up no time") {
  const std::string calendar = calendar_report(judged_plan());
  const std::vector<std::string> all = unfolded(calendar);
  const auto uid =
      std::find(all.begin(), all.end(),
                "UID:seat.varnish.coat-1.back.coat.airing.open.hall-bench@tackfree.invalid");
  REQUIRE(uid != all.end());
  const std::vector<std::string> event(uid, std::find(uid, all.end(), "END:VEVENT"));
  const auto has = [&](const std::string& line) {
    return std::find(event.begin(), event.end(), line) != event.end();
  };
  CHECK(has("DTSTART:20270410T140000Z"));
  CHECK(has("DTEND:20270410T181000Z"));
  CHECK(has("SUMMARY:Airing: open to outdoors 10:00 am to 2:10 pm\\, too little: see the note"));
  CHECK(std::ranges::any_of(event, [](const std::string& line) {
    return line.find(
               "better open to outdoors while coating\\, then open for 5 h\\, and no shorter than "
               "here") != std::string::npos;
  }));
  CHECK(has("TRANSP:TRANSPARENT"));
  CHECK(has("TRIGGER;RELATED=END:PT0S"));
}

TEST_CASE("nothing that is over by the plan's now is in the calendar") {
  Plan plan = small_plan();
  plan.now = at("2027-04-10T14:20:00Z");
  for (const std::string& end : values(calendar_report(plan), "DTEND"))
    CHECK(end > "20270410T142000Z");
}

TEST_CASE("the end of a coat's wait is an event whose alarm rings in the person's hours") {
  Plan plan = small_plan();
  plan.course.working = {{at("2027-04-11T12:00:00Z"), at("2027-04-11T16:00:00Z")}};
  std::string calendar = calendar_report(plan, Feed::waits);
  CHECK(values(calendar, "SUMMARY").front() == "seat: coat 1 of 2\\, back: dry to handle");
  CHECK(values(calendar, "DTSTART").front() == "20270411T034000Z");
  CHECK(values(calendar, "TRIGGER;VALUE=DATE-TIME") ==
        std::vector<std::string>{"20270411T120000Z"});
  plan.course.working = {{at("2027-04-11T03:00:00Z"), at("2027-04-11T16:00:00Z")}};
  CHECK(values(calendar_report(plan, Feed::waits), "TRIGGER").front() == "PT0S");
}

TEST_CASE("work and waits can be had apart, and together they are the whole") {
  const Plan plan = judged_plan();
  const std::size_t all = values(calendar_report(plan), "UID").size();
  const std::size_t work = values(calendar_report(plan, Feed::work), "UID").size();
  const std::size_t waits = values(calendar_report(plan, Feed::waits), "UID").size();
  CHECK(work == 5);
  CHECK(all == work + waits);
  for (const std::string& transparency : values(calendar_report(plan, Feed::waits), "TRANSP"))
    CHECK(transparency == "TRANSPARENT");
}
