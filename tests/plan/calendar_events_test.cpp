#include "tackfree/plan/calendar_events.hpp"

#include <algorithm>
#include <set>
#include <string>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using What = CalendarEvent::What;
using Rings = EventAlarm::Rings;

std::ptrdiff_t count(const std::vector<CalendarEvent>& events, What what) {
  return std::ranges::count(events, what, &CalendarEvent::what);
}

TEST_CASE("each piece of a step, airing, end of a wait and milestone is an event of its own") {
  const auto events = calendar_events(judged_plan());
  CHECK(count(events, What::step) == 5);
  CHECK(count(events, What::airing) == 1);
  CHECK(count(events, What::wait_end) == 1);
  CHECK(count(events, What::milestone) == 2);
  std::set<std::string> uids;
  for (const CalendarEvent& event : events) {
    uids.insert(event.uid);
    CHECK(event.uid.ends_with(".hall-bench@tackfree.invalid"));
    CHECK(event.takes_time() != is_of_waits(event.category));
  }
  CHECK(uids.size() == events.size());
}

TEST_CASE("a step rings before it, an airing at its end, a wait in the person's hours") {
  Plan plan = judged_plan();
  plan.course.working = {{at("2027-04-11T12:00:00Z"), at("2027-04-11T16:00:00Z")}};
  for (const CalendarEvent& event : calendar_events(plan)) {
    if (event.what == What::step && event.time.begin > plan.now)
      CHECK(event.alarm.value().rings == Rings::before_begin);
    if (event.what == What::step && event.time.begin <= plan.now) CHECK_FALSE(event.alarm);
    if (event.what == What::airing) CHECK(event.alarm.value().rings == Rings::at_end);
    if (event.what == What::wait_end) CHECK(event.alarm.value().at == at("2027-04-11T12:00:00Z"));
    if (event.what == What::milestone) CHECK_FALSE(event.alarm);
  }
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
  plan.job.last_plan->events = {state("to-come", Minutes(60)), state("past", Minutes(-60)),
                                state(events.front().uid, Minutes(60))};
  const auto gone = gone_events(plan, events);
  REQUIRE(gone.size() == 2);
  CHECK(gone[0].cancelled);
  CHECK(gone[0].sequence == 4);
  CHECK_FALSE(gone[1].cancelled);
  CHECK(gone[1].sequence == 3);
}

}  // namespace
}  // namespace tackfree
