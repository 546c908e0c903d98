// Two choices: sessions against dates, written down by hand.
#pragma once

#include "tackfree/plan/choices.hpp"

#include "small_plan.hpp"

namespace tackfree {

/// Two choices written down by hand: four sessions by the 12th, two by the 16th.
inline Choices two_choices() {
  Choices choices;
  for (const bool few : {false, true}) {
    Plan plan = small_plan();
    plan.schedule.sessions.assign(few ? 2 : 4, Session{});
    plan.schedule.ready_at = at(few ? "2027-04-16T21:00Z" : "2027-04-12T21:20Z");
    plan.schedule.proof = Proof{*plan.schedule.ready_at, true, few};
    plan.work.in_all = Minutes(few ? 200 : 260);
    plan.work.days.resize(few ? 2 : 4);
    AttendedWork work = std::move(plan.work);
    choices.ways.push_back({std::move(plan), std::move(work)});
  }
  choices.none_fewer = true;
  return choices;
}

}  // namespace tackfree
