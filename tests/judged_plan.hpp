// Judged plan: the small plan in a room whose vapour was judged by hand.
#pragma once

#include "small_plan.hpp"

namespace tackfree {

/// One coating of 20 g on 10 April, door open for 4 h 15 min; a tenth of the explosive share that
/// stops, exposure 1.3 times the 8-hour limit; two hours more are proposed.
inline Plan judged_plan() {
  Plan plan = small_plan();
  plan.job.room.volume = cubic_metres(90);
  plan.job.data.air_changes.mixing_one_opening.value = 3;
  plan.job.data.air_changes.mixing_through_draft.value = 2;
  plan.job.data.air_changes.closed.value = per_hour(0.5);
  plan.job.data.air_changes.ajar.value = per_hour(1.5);
  plan.job.data.air_changes.open.value = per_hour(5);
  plan.job.data.air_changes.most_credited.value = per_hour(20);
  Solvent spirits;
  spirits.key = "mineral_spirits";
  spirits.title = "mineral spirits";
  plan.job.data.solvents = {spirits};
  RoomJudgement room;
  room.habit = {Opening::open, Opening::open, hours(3)};
  room.habit_given = true;
  room.solvents = {0};
  for (LimitJudgement& limit : room.limits)
    limit = {0.1, at("2027-04-10T15:00:00Z"), cubic_metres_per_hour(100)};
  room.limits[3].share = 1.3;
  StretchJudgement stretch;
  stretch.steps = {1, 2};
  stretch.coating = {at("2027-04-10T14:00:00Z"), at("2027-04-10T15:10:00Z")};
  stretch.solvent = grams(20.3);
  stretch.airing = {{{at("2027-04-10T14:00:00Z"), at("2027-04-10T18:10:00Z")}, Opening::open}};
  stretch.too_little = true;
  stretch.under_limit_at = at("2027-04-10T17:00:00Z");
  for (int quarter = 0; quarter <= 96; ++quarter)
    stretch.vapour.push_back({stretch.coating.begin + Minutes(15 * quarter), 2.0 - quarter / 50.0});
  room.stretches = {stretch};
  room.verdict = HabitVerdict::too_little;
  room.proposed = AiringHabit{Opening::open, Opening::open, hours(5)};
  room.proposed_eight_hours = 0.9;
  plan.room = room;
  return plan;
}

}  // namespace tackfree
