#include "tackfree/schedule/set_dates.hpp"

namespace tackfree {

namespace {

bool is_set_by(const Pin& pin, const Job& job, const Operation& coat) {
  const FinishSystem* system = find_named(job.systems, job.batches[coat.batch].system);
  return system != nullptr && coat.step < system->steps.size() &&
         system->steps[coat.step].name == pin.step && coat.coat == pin.coat &&
         (!pin.side || coat.side == *pin.side || coat.side == Side::both);
}

Interval hours_of(const Pin& pin, const Zone& zone) {
  const Instant from = zone.instant({pin.on, pin.between.begin});
  const Instant to = pin.between.end == 24 * 60 ? zone.instant({next_day(pin.on), 0})
                                                : zone.instant({pin.on, pin.between.end});
  return {from, to};
}

}  // namespace

bool has_set_dates(const Job& job, const Operation& operation) {
  const BatchRules& set = job.batches[operation.batch].rules;
  return set.not_before || (operation.kind == OperationKind::coat &&
                            !(set.no_coating_on.empty() && set.pins.empty()));
}

solver::Rule rule_of_dates(const Job& job, const Operation& operation, Interval time) {
  const BatchRules& set = job.batches[operation.batch].rules;
  if (set.not_before && time.begin < *set.not_before) return rules::not_before;
  if (operation.kind != OperationKind::coat) return solver::no_rule;
  const Zone& zone = job.calendar.zone;
  const Date first = zone.local(time.begin).on, last = zone.local(time.end - Minutes(1)).on;
  for (const Date on : set.no_coating_on)
    if (first <= on && on <= last) return rules::no_coating;
  for (const Pin& pin : set.pins) {
    if (!is_set_by(pin, job, operation)) continue;
    const Interval within = hours_of(pin, zone);
    if (time.begin < within.begin || time.end > within.end) return rules::pinned;
  }
  return solver::no_rule;
}

}  // namespace tackfree
