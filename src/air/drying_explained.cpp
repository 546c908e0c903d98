#include "tackfree/air/drying_explained.hpp"

#include "tackfree/air/drying_progress.hpp"
#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

/// What a wait came to, by the stage's own progress alone.
struct OwnWait {
  Duration length;
  double temperature = 0, both = 0;  ///< sums of factor x minutes
  double outside_minutes = 0;
};

/// Goes on until `needed` minutes at the label's speed are done, in the steps of the clock, the
/// last one in part. `end` is where the clock knows the stage to be reached.
OwnWait own_wait(const StageRate& rate, const AirSeries& air, double air_factor, Instant begins,
                 Instant end, double needed) {
  OwnWait wait;
  DryingFactors before = rate.factors(air.at(begins));
  const double whole = to_duration(rate_step).in(minutes);
  double done = 0, length = 0;
  for (Instant at = begins; at < end + 2 * rate_step && done < needed; at += rate_step) {
    const AirState state = air.at(at + rate_step);
    const DryingFactors after = rate.factors(state);
    const double both = (before.both() + after.both()) / 2;
    const double step = std::min(whole, (needed - done) / (both * air_factor));
    done += both * air_factor * step;
    length += step;
    wait.temperature += (before.temperature + after.temperature) / 2 * step;
    wait.both += both * step;
    if (rate.extrapolates(state.temperature)) wait.outside_minutes += step;
    before = after;
  }
  wait.length = minutes(length);
  return wait;
}

TimeFactor with_rule_of_warmth(double factor, const Coating& coating, Stage stage) {
  const DryingLaw& law = coating.law;
  if (!coating.label_points.at(index_of(stage)).empty()) return {factor, Origin::label, {}};
  if (law.driver == DryingLaw::Driver::vapour_deficit)
    return {factor, Origin::published, "constant-rate drying, van Mechelen 2014"};
  if (law.q10) return {factor, law.q10->origin, law.q10->source};
  return {factor, law.activation_energy.origin, law.activation_energy.source};
}

TimeFactor with_rule_of_humidity(double factor, const DryingLaw& law) {
  if (law.driver == DryingLaw::Driver::vapour_deficit)
    return {factor, Origin::published, "constant-rate drying, van Mechelen 2014"};
  if (law.driver == DryingLaw::Driver::vapour_pressure) return {factor, Origin::practice, {}};
  return {factor, Origin::assumed, {}};
}

}  // namespace

std::optional<DryingExplanation> explained(const Coating& coating, Stage stage,
                                           const AirSeries& air, Speed air_speed,
                                           const DryingClock& clock, Instant applied,
                                           double film_ratio) {
  const auto& label = coating.label_after.at(index_of(stage));
  const Instant begins = std::max(applied, air.covers().begin);
  const auto ends = clock.reached(stage, begins, film_ratio);
  if (!label || !ends) return std::nullopt;
  const Sourced<double>& exponent = film_exponent(coating.law, stage);
  const double film = power(film_ratio, exponent.value);
  const double air_factor = air_speed_factor(coating.law.air_exponent.value, air_speed);
  const OwnWait own = own_wait(StageRate(coating, stage), air, air_factor, begins, *ends,
                               coating.slowness * label->value.in(minutes)*film);
  const double length = own.length.in(minutes);
  if (length <= 0.0 || own.both <= 0.0) return std::nullopt;
  return DryingExplanation{
      .stage = stage,
      .label = *label,
      .label_least = coating.label_least.at(index_of(stage)),
      .temperature = with_rule_of_warmth(length / own.temperature, coating, stage),
      .humidity = with_rule_of_humidity(own.temperature / own.both, coating.law),
      .film = {film, exponent.origin, exponent.source},
      .air_movement = {1.0 / air_factor, coating.law.air_exponent.origin,
                       coating.law.air_exponent.source},
      .slowness = {coating.slowness, Origin::measured, "your log"},
      .held = {to_duration(*ends - begins) / own.length, Origin::practice, {}},
      .outside_label = own.outside_minutes / length,
      .begins = begins,
      .ends = *ends};
}

}  // namespace tackfree
