// Judged job: 300 g of mineral spirits put on in half an hour in a garage of 90 m3.
#pragma once

#include "tackfree/fumes/room_judgement.hpp"

#include <optional>

namespace tackfree::testing {

inline Solvent spirits() {
  Solvent solvent;
  solvent.key = "mineral_spirits";
  solvent.title = "mineral spirits";
  solvent.molar_mass.value = grams_per_mole(144);
  solvent.explosive_limit.value = percent(0.8);
  solvent.limit_8h.value = milligrams_per_cubic_metre(350);
  solvent.limit_15min = sourced(milligrams_per_cubic_metre(1800), Origin::published);
  solvent.release.value = per_hour(0.4);
  return solvent;
}

inline AirChanges usual_changes() {
  AirChanges changes;
  changes.closed.value = per_hour(0.5);
  changes.ajar.value = per_hour(1.5);
  changes.open.value = per_hour(5);
  changes.most_credited.value = per_hour(20);
  changes.fan_delivers.value = percent(50);
  changes.mixing_one_opening.value = 3;
  changes.mixing_through_draft.value = 2;
  return changes;
}

struct JudgedJob {
  Job job;
  VapourPlan plan;

  JudgedJob() {
    job.data.solvents = {spirits()};
    job.data.air_changes = usual_changes();
    job.room.volume = cubic_metres(90);
    plan.solvents = {0};
    plan.sources = {{.release = per_hour(0.4), .applications = {}, .in_air = {}}};
    add_coat(Duration{});
  }

  /// 300 g from `begin` on.
  void add_coat(Duration begin) {
    const Interval time{plan.start + whole_minutes_up(begin),
                        plan.start + whole_minutes_up(begin + hours(0.5))};
    plan.stretches.push_back({time, {plan.stretches.size()}});
    plan.released.push_back(grams(300));
    plan.sources[0].applications.push_back({begin, begin + hours(0.5), grams(300), fraction(0)});
    plan.end = begin + days(14);
  }

  std::optional<RoomJudgement> judged() const { return room_judgement(job, plan); }
};

}  // namespace tackfree::testing
