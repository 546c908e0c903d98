#include "tackfree/air/drying_rate.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace tackfree {

namespace {

/// Molar gas constant, kJ/(mol K). Source: CODATA 2018, exact in the SI of 2019 (from memory).
constexpr double gas_constant = 8.314462618e-3;

/// Where rates are 1: 23 C and 50 % RH. Source: ASTM D3924, standard conditions for testing paint;
/// the air speed 0.10 m/s, "free from drafts", is assumed.
constexpr Temperature reference_temperature = celsius(23);
constexpr Humidity reference_humidity = humidity_percent(50);
constexpr Speed reference_air_speed = metres_per_second(0.10);

/// Oxygen cure: full speed to 60 % RH, half speed from 90 % on, straight between. Source: assumed.
double oxidative_humidity_factor(Humidity humidity) {
  const double excess = (humidity - humidity_fraction(0.60)) / humidity_fraction(0.30);
  return 1.0 - 0.5 * std::clamp(excess, 0.0, 1.0);
}

/// Water leaves a dispersion film as from a wet surface, in proportion to the vapour deficit.
/// Source: constant-rate drying, van Mechelen 2014, who cites Croll and Keddie.
double vapour_deficit_factor(const HumidAir& air) {
  static const Pressure reference_deficit =
      saturation_pressure(reference_temperature) -
      vapour_pressure(reference_temperature, reference_humidity);
  return std::max(0.0, (air.saturation - air.vapour) / reference_deficit);
}

/// A moisture-curing film takes its water from the air, in proportion to the vapour pressure.
/// Source: practice (cure goes with grains of water per pound of air); the limits are assumed.
double vapour_pressure_factor(const HumidAir& air) {
  static const Pressure reference_vapour =
      vapour_pressure(reference_temperature, reference_humidity);
  constexpr double least = 0.1, most = 2.0;
  return std::clamp(air.vapour / reference_vapour, least, most);
}

}  // namespace

HumidAir::HumidAir(Temperature t, Pressure e)
    : temperature(t), vapour(e), saturation(saturation_pressure(t)) {}

HumidAir HumidAir::at_humidity(Humidity humidity) const {
  HumidAir air = *this;
  air.vapour = saturation * humidity.in(humidity_fraction);
  return air;
}

/// Source: the Arrhenius law, with the class's own activation energy; in its place the definition
/// of Q10, the ratio of rates 10 K apart.
ShelteredRate::ShelteredRate(const DryingLaw& law)
    : driver_(law.driver),
      slowed_by_humidity_(law.slowed_by_humidity),
      stops_below_(law.stops_below.value),
      per_inverse_kelvin_(-law.activation_energy.value.in(kilojoules_per_mole) / gas_constant) {
  if (law.q10) per_kelvin_ = logarithm(law.q10->value) / 10.0;
}

double ShelteredRate::warmth(Temperature t) const {
  if (t < stops_below_) return 0.0;
  if (driver_ == DryingLaw::Driver::vapour_deficit) return 1.0;
  if (per_kelvin_) return exponential(*per_kelvin_ * (t - reference_temperature).in(kelvins));
  return exponential(per_inverse_kelvin_ *
                     (1.0 / t.in_kelvin() - 1.0 / reference_temperature.in_kelvin()));
}

double ShelteredRate::water(const HumidAir& air) const {
  double factor = 1.0;
  if (driver_ == DryingLaw::Driver::vapour_deficit) factor = vapour_deficit_factor(air);
  if (driver_ == DryingLaw::Driver::vapour_pressure) factor = vapour_pressure_factor(air);
  if (slowed_by_humidity_)
    factor *= oxidative_humidity_factor(humidity_fraction(air.vapour / air.saturation));
  return factor;
}

double air_speed_factor(double exponent, Speed air_speed) {
  constexpr Speed natural_convection = metres_per_second(0.05);  // Source: assumed
  constexpr double limit = 2.0;  // late drying is limited from within; the figure is assumed
  const double ratio =
      (air_speed + natural_convection) / (reference_air_speed + natural_convection);
  return std::min(limit, power(ratio, exponent));
}

double drying_rate(const DryingLaw& law, const HumidAir& air, Speed air_speed) {
  return ShelteredRate(law)(air) * air_speed_factor(law.air_exponent.value, air_speed);
}

const Sourced<double>& film_exponent(const DryingLaw& law, Stage stage) {
  return law.film_exponents.at(static_cast<std::size_t>(depth_of(stage)));
}

StageRate::StageRate(const Coating& coating, Stage stage)
    : law_(coating.law),
      label_humidity_(coating.label_humidity),
      label_rate_(law_at_label_humidity(coating.label_temperature)),
      points_(coating.label_points.at(index_of(stage))) {
  const auto& label = coating.label_after.at(index_of(stage));
  if (label) label_hours_ = label->value.in(hours);
}

double StageRate::law_at_label_humidity(Temperature t) const {
  return law_({t, vapour_pressure(t, label_humidity_)});
}

/// The hours at `t` by the label's rows, and beyond them from the law's rate at the label's
/// humidity, which is over 0.
double StageRate::hours_by_rows(Temperature t, double by_law) const {
  const auto beyond = [&](const LabelPoint& nearest) {
    return nearest.after.in(hours)*law_at_label_humidity(nearest.at) / by_law;
  };
  if (t <= points_.front().at) return beyond(points_.front());
  if (t >= points_.back().at) return beyond(points_.back());
  const auto warmer =
      std::find_if(points_.begin(), points_.end(), [&](const LabelPoint& p) { return p.at > t; });
  const LabelPoint& a = *std::prev(warmer);
  const double share = (1.0 / t.in_kelvin() - 1.0 / a.at.in_kelvin()) /
                       (1.0 / warmer->at.in_kelvin() - 1.0 / a.at.in_kelvin());
  return a.after.in(hours)*power(warmer->after / a.after, share);
}

DryingFactors StageRate::factors(const HumidAir& air) const {
  const double water_at_label = law_.water(air.at_humidity(label_humidity_));
  const double by_law = law_.warmth(air.temperature) * water_at_label;
  if (by_law <= 0.0 || label_rate_ <= 0.0) return {0.0, 1.0};
  const double humidity = law_.water(air) / water_at_label;
  if (points_.empty()) return {by_law / label_rate_, humidity};
  return {label_hours_ / hours_by_rows(air.temperature, by_law), humidity};
}

double StageRate::relative(const HumidAir& air) const {
  if (points_.empty() && label_rate_ > 0.0) return law_(air) / label_rate_;
  return factors(air).both();
}

bool StageRate::extrapolates(Temperature t) const {
  return !points_.empty() && (t < points_.front().at || t > points_.back().at);
}

}  // namespace tackfree
