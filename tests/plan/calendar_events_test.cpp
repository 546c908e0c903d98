#include "tackfree/plan/calendar_events.hpp"

#include <algorithm>
#include <set>
#include <string>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using What = CalendarEvent::What;

/// The events of this kind.
std::vector<CalendarEvent> only(const Plan& plan, What what) {
  std::vector<CalendarEvent> events = calendar_events(plan);
  std::erase_if(events, [&](const CalendarEvent& event) { return event.what != what; });
  return events;
}

Plan shared_plan() {
  Plan plan = small_plan();
  plan.job.people = {{.name = "Ana", .hours = {}}, {.name = "Ben", .hours = {}}};
  plan.schedule.steps[0].by = {0, 1};
  plan.schedule.steps[1].by = {1};
  plan.schedule.steps[2].by = {0};
  plan.schedule.steps[3].by = {0};
  plan.schedule.sessions[0].set_up_by = 1;
  plan.schedule.sessions[0].clean_up_by = 0;
  return plan;
}

TEST_CASE("a session is known by its first coat, else by its first step or the rest of it") {
  const auto sessions = only(small_plan(), What::session);
  REQUIRE(sessions.size() == 3);
  CHECK(sessions[0].uid == "seat.varnish.bare.both.sand-p120.session.hall-bench@tackfree.invalid");
  CHECK(sessions[1].uid == "seat.varnish.coat-1.back.coat.session.hall-bench@tackfree.invalid");
  CHECK(sessions[1].time == Interval{at("2027-04-10T13:00:00Z"), at("2027-04-10T15:30:00Z")});
  CHECK(sessions[2].uid ==
        "seat.varnish.coat-1.both.turn-over.session.hall-bench@tackfree.invalid");
  Plan plan = small_plan();
  plan.schedule.steps[0].pieces[1] = {at("2027-04-10T10:00:00Z"), at("2027-04-10T10:15:00Z")};
  CHECK(only(plan, What::session)[1].uid ==
        "seat.varnish.bare.both.sand-p120.2.session.hall-bench@tackfree.invalid");
}

TEST_CASE("work to come rings once before it, work under way and what is ready never") {
  for (const CalendarEvent& event : calendar_events(small_plan())) {
    if (event.what == What::session && event.time.begin > small_plan().now)
      CHECK(event.alarm == EventAlarm::before_begin);
    else
      CHECK_FALSE(event.alarm);
    CHECK(event.takes_time() == (event.what == What::session));
  }
  const auto ready = only(small_plan(), What::ready);
  REQUIRE(ready.size() == 1);
  CHECK(ready[0].time.begin == at("2027-04-12T03:00:00Z"));
  CHECK(only(small_plan(), What::cured).size() == 1);
}

TEST_CASE("closing up rings by day; from 11 pm to 6 am there is no entry for it") {
  Plan plan = judged_plan();
  plan.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(3)};
  plan.room->proposed.reset();
  REQUIRE(only(plan, What::close_up).size() == 1);
  const CalendarEvent close = only(plan, What::close_up)[0];
  CHECK(close.time.begin == at("2027-04-10T18:10:00Z"));
  CHECK(close.alarm == EventAlarm::at_begin);
  CHECK(close.uid == "seat.varnish.coat-1.back.coat.close-up.hall-bench@tackfree.invalid");
  plan.job.room.airing->after_for = hours(12);  // 11:10 pm in New York
  CHECK(only(plan, What::close_up).empty());
  const Zone zone = plan.job.calendar.zone;
  CHECK_FALSE(is_at_night(at("2027-04-11T02:59:00Z"), zone));
  CHECK(is_at_night(at("2027-04-11T03:00:00Z"), zone));
  CHECK(is_at_night(at("2027-04-11T09:59:00Z"), zone));
  CHECK_FALSE(is_at_night(at("2027-04-11T10:00:00Z"), zone));
}

TEST_CASE("wiping off rings on its minute") {
  Plan plan = small_plan();
  plan.list.operations[4].kind = OperationKind::wipe_off;
  const auto events = only(plan, What::wipe_off);
  REQUIRE(events.size() == 1);
  CHECK(events[0].time.begin == at("2027-04-11T13:00:00Z"));
  CHECK(events[0].alarm == EventAlarm::at_begin);
}

TEST_CASE("a pot rings only where it ends before the tools are clean") {
  Plan plan = small_plan();
  plan.job.coatings[0].label_temperature = celsius(15);  // that of the plan's air
  plan.job.coatings[0].pot_life = sourced(hours(1), Origin::label);
  const auto events = only(plan, What::pot_end);
  REQUIRE(events.size() == 1);  // of the second coat it is 15:40, when all is clean
  CHECK(events[0].time.begin == at("2027-04-10T15:10:00Z"));
  CHECK(events[0].alarm == EventAlarm::at_begin);
  plan.job.coatings[0].pot_life = sourced(hours(2), Origin::label);
  CHECK(only(plan, What::pot_end).empty());
}

TEST_CASE("each of several people has a calendar of their own work beside everybody's") {
  const Plan plan = shared_plan();
  const auto sessions = only(plan, What::session);
  const auto times = [&](std::optional<std::size_t> who) {
    std::vector<Interval> own;
    for (const CalendarEvent& event : sessions)
      if (event.who == who) own.push_back(event.time);
    return own;
  };
  CHECK(times({}).size() == 3);
  CHECK(times(0) ==
        std::vector<Interval>{{at("2027-04-09T21:00:00Z"), at("2027-04-09T21:15:00Z")},
                              {at("2027-04-10T14:40:00Z"), at("2027-04-10T15:30:00Z")},
                              {at("2027-04-11T13:00:00Z"), at("2027-04-11T13:10:00Z")}});
  CHECK(times(1) ==
        std::vector<Interval>{{at("2027-04-10T13:00:00Z"), at("2027-04-10T14:40:00Z")}});
  CHECK(sessions[1].work.people == std::vector<std::size_t>{0, 1});
  CHECK(sessions.back().uid ==
        "seat.varnish.coat-1.back.coat.session.for.ben.hall-bench@tackfree.invalid");
}

TEST_CASE("no two events have the same UID, or say the same of the same minute") {
  for (const Plan& plan : {judged_plan(), shared_plan()}) {
    std::set<std::string> uids, facts;
    const auto events = calendar_events(plan);
    for (const CalendarEvent& event : events) {
      uids.insert(event.uid);
      facts.insert(iso_utc(event.time.begin) + std::to_string(static_cast<int>(event.what)) + "/" +
                   std::to_string(event.index) + "/" +
                   (event.who ? std::to_string(*event.who) : ""));
    }
    CHECK(uids.size() == events.size());
    CHECK(facts.size() == events.size());
  }
}

TEST_CASE(
    "a session that was done earlier moves to where it was, once the last plan had it later") {
  Plan plan = small_plan();
  const std::string uid = only(plan, What::session)[2].uid;
  plan.now = at("2027-04-11T14:00:00Z");
  plan.list.operations[4].done = Done{.time = plan.schedule.steps[3].pieces[0]};
  CHECK(only(plan, What::session).empty());
  plan.job.last_plan = LastPlan{};
  plan.job.last_plan->events = {
      {.uid = uid, .time = {at("2027-04-11T20:00:00Z"), at("2027-04-11T20:10:00Z")}}};
  REQUIRE(only(plan, What::session).size() == 1);
  CHECK(only(plan, What::session)[0].time.begin == at("2027-04-11T13:00:00Z"));
  CHECK_FALSE(only(plan, What::session)[0].alarm);
}

TEST_CASE("what the last plan had to come and this one has not is gone, one revision higher") {
  Plan plan = small_plan();
  const auto events = calendar_events(plan);
  const auto state = [&](const std::string& uid, Minutes from_now) {
    return EventState{.uid = uid,
                      .time = {plan.now + from_now, plan.now + from_now + Minutes(10)},
                      .sequence = 3};
  };
  plan.job.last_plan = LastPlan{};
  // As events were known when each step had its own.
  plan.job.last_plan->events = {
      state("seat.varnish.coat-1.back.coat.hall-bench@tackfree.invalid", Minutes(60)),
      state("past", Minutes(-60)), state(events.front().uid, Minutes(60))};
  const auto gone = gone_events(plan, events);
  REQUIRE(gone.size() == 2);
  CHECK(gone[0].cancelled);
  CHECK(gone[0].sequence == 4);
  CHECK_FALSE(gone[1].cancelled);
  CHECK(gone[1].sequence == 3);
}

TEST_CASE("what was cancelled once is not revised again") {
  Plan plan = small_plan();
  plan.job.last_plan = LastPlan{};
  plan.job.last_plan->events = {{.uid = "old",
                                 .time = {plan.now + Minutes(60), plan.now + Minutes(70)},
                                 .sequence = 4,
                                 .cancelled = true}};
  const auto gone = gone_events(plan, calendar_events(plan));
  REQUIRE(gone.size() == 1);
  CHECK(gone[0].sequence == 4);
}

}  // namespace
}  // namespace tackfree
