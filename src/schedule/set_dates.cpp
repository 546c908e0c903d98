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

SetDates::SetDates(const Job& job, const Operation& operation)
    : not_before_(job.batches[operation.batch].rules.not_before) {
  if (operation.kind != OperationKind::coat) return;
  const Zone& zone = job.calendar.zone;
  const BatchRules& set = job.batches[operation.batch].rules;
  for (const Date on : set.no_coating_on)
    no_coating_.push_back({zone.instant({on, 0}), zone.instant({next_day(on), 0})});
  for (const Pin& pin : set.pins)
    if (is_set_by(pin, job, operation)) set_for_.push_back(hours_of(pin, zone));
}

bool SetDates::any() const { return not_before_ || !no_coating_.empty() || !set_for_.empty(); }

solver::Rule SetDates::rule(Interval time) const {
  if (not_before_ && time.begin < *not_before_) return rules::not_before;
  for (const Interval& day : no_coating_)
    if (time.begin < day.end && day.begin < time.end) return rules::no_coating;
  for (const Interval& within : set_for_)
    if (time.begin < within.begin || time.end > within.end) return rules::pinned;
  return solver::no_rule;
}

}  // namespace tackfree
