#include "tackfree/export/event_revisions.hpp"

#include "tackfree/export/icalendar.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "export/calendar_text.hpp"
#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// The plan with what its own calendar said as its last plan.
Plan made_again(Plan plan) {
  LastPlan last;
  last.now = plan.now;
  last.events = calendar_states(plan);
  plan.job.last_plan = std::move(last);
  return plan;
}

/// The property `name` of the event with this UID.
std::string value_of(const std::string& calendar, const std::string& uid, const std::string& name) {
  bool inside = false;
  for (const std::string& line : unfolded(calendar)) {
    if (line.starts_with("UID:")) inside = line == "UID:" + uid;
    if (inside && line.starts_with(name + ":")) return line.substr(name.size() + 1);
  }
  return {};
}

}  // namespace

// RFC 5545, 3.8.7.4: the sequence number is raised when an event is revised in a significant way.
TEST_CASE("a plan made again revises nothing, and a step that moves goes up by one") {
  Plan plan = made_again(judged_plan());
  for (const std::string& number : values(calendar_report(plan), "SEQUENCE")) CHECK(number == "0");
  const std::string uid = values(calendar_report(plan), "UID").front();
  plan.schedule.steps[0].pieces[0].end += Minutes(5);
  const std::string moved = calendar_report(plan);
  CHECK(value_of(moved, uid, "SEQUENCE") == "1");
  const auto numbers = values(moved, "SEQUENCE");
  CHECK(std::ranges::count(numbers, "1") == 1);
  const std::string later = calendar_report(made_again(plan));
  CHECK(value_of(later, uid, "SEQUENCE") == "1");
}

// RFC 5545, 3.8.1.11: STATUS CANCELLED; 3.8.4.7: the UID stays the event's own.
TEST_CASE(
    "an event to come that is gone is there once more as cancelled, one that is past is not") {
  Plan plan = made_again(judged_plan());
  EventState gone = plan.job.last_plan->events.front();
  gone.uid = "gone@tackfree.invalid";
  gone.sequence = 3;
  EventState past = gone;
  past.uid = "past@tackfree.invalid";
  past.time = {plan.now - Minutes(60), plan.now - Minutes(30)};
  plan.job.last_plan->events.push_back(gone);
  plan.job.last_plan->events.push_back(past);
  const std::string calendar = calendar_report(plan);
  CHECK(value_of(calendar, gone.uid, "STATUS") == "CANCELLED");
  CHECK(value_of(calendar, gone.uid, "SEQUENCE") == "4");
  CHECK(values(calendar, "STATUS").size() == 1);
  const auto uids = values(calendar, "UID");
  CHECK(std::ranges::count(uids, gone.uid) == 1);
  CHECK(std::ranges::count(uids, past.uid) == 0);
}

// RFC 5545, 3.8.4.7: a UID is text, and escaped like all text.
TEST_CASE("a last plan brings no property of its own into the calendar") {
  Plan plan = made_again(judged_plan());
  EventState gone = plan.job.last_plan->events.front();
  gone.uid = "gone\r\nATTENDEE:mailto:a@example.org\x1b\u202e;x";
  gone.summary = "old\nURL:x\x07";
  gone.category = "old\nURL:y\u009b";
  plan.job.last_plan->events.push_back(gone);
  const std::string calendar = calendar_report(plan);
  CHECK(values(calendar, "ATTENDEE").empty());
  CHECK(values(calendar, "URL").empty());
  const std::string uid = "gone \\nATTENDEE:mailto:a@example.org\\;x";
  CHECK(value_of(calendar, uid, "STATUS") == "CANCELLED");
  CHECK(value_of(calendar, uid, "SUMMARY") == "old\\nURL:x");
  CHECK(value_of(calendar, uid, "CATEGORIES") == "old\\nURL:y");
}

TEST_CASE("entries of single steps, as calendars had them before, are cancelled once") {
  Plan plan = made_again(judged_plan());
  const std::string old = "seat.varnish.coat-1.back.coat.hall-bench@tackfree.invalid";
  plan.job.last_plan->events = {{.uid = old,
                                 .time = {at("2027-04-10T14:00:00Z"), at("2027-04-10T14:40:00Z")},
                                 .summary = "seat: coat 1 of 2, back",
                                 .category = "coating",
                                 .content = "0f",
                                 .sequence = 2}};
  const std::string calendar = calendar_report(plan);
  CHECK(value_of(calendar, old, "STATUS") == "CANCELLED");
  CHECK(value_of(calendar, old, "SEQUENCE") == "3");
  CHECK(values(calendar, "STATUS").size() == 1);
  CHECK(value_of(calendar_report(made_again(plan)), old, "SEQUENCE") == "3");
}

TEST_CASE("one person's calendar has the work of that person, and is revised by itself") {
  Plan plan = small_plan();
  plan.job.people = {{.name = "Ana", .hours = {}}, {.name = "Ben", .hours = {}}};
  for (DatedStep& step : plan.schedule.steps) step.by.assign(step.pieces.size(), 0);
  plan.schedule.steps[3].by = {1};
  plan.schedule.sessions[0].set_up_by = plan.schedule.sessions[0].clean_up_by = 0;
  const auto sessions = [&](std::optional<std::size_t> who) {
    const auto transparency = values(calendar_report(plan, who), "TRANSP");
    return std::ranges::count(transparency, "OPAQUE");
  };
  CHECK(sessions({}) == 3);
  CHECK(sessions(0) == 2);
  CHECK(sessions(1) == 1);
  CHECK(values(calendar_report(plan, 1), "SUMMARY").front() == "Ben: Turn over: seat");
  Plan later = made_again(plan);
  later.schedule.steps[3].pieces[0].end += Minutes(5);
  for (const std::string& number : values(calendar_report(later, 0), "SEQUENCE"))
    CHECK(number == "0");
  CHECK(values(calendar_report(later, 1), "SEQUENCE").front() == "1");
}

// RFC 5545, 3.8.7.4 and 3.8.1.11: a step that comes back after its event was cancelled is a further
// revision of the same UID, without that status.
TEST_CASE("an event that comes back after it was cancelled is shown again, one revision higher") {
  Plan plan = made_again(judged_plan());
  EventState& back = plan.job.last_plan->events.front();
  back.cancelled = true;
  back.sequence = 2;
  const std::string calendar = calendar_report(plan);
  CHECK(value_of(calendar, back.uid, "SEQUENCE") == "3");
  CHECK(values(calendar, "STATUS").empty());
}

TEST_CASE("the states for the next plan are those of the events in the calendar") {
  const Plan plan = judged_plan();
  const auto uids = values(calendar_report(plan), "UID");
  const std::vector<EventState> states = calendar_states(plan);
  REQUIRE(states.size() == uids.size());
  for (std::size_t i = 0; i < uids.size(); ++i) {
    CHECK(states[i].uid == uids[i]);
    CHECK(states[i].sequence == 0);
    CHECK_FALSE(states[i].content.empty());
  }
}
