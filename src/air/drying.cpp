#include "tackfree/air/drying.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

/// Molar gas constant, kJ/(mol K). Source: CODATA 2018, exact in the SI of 2019 (from memory).
constexpr double gas_constant = 8.314462618e-3;

/// Where rates are 1: 23 C and 50 % RH. Source: ASTM D3924, standard conditions for testing paint;
/// the air speed 0.10 m/s, "free from drafts", is assumed.
constexpr Temperature reference_temperature = celsius(23);
constexpr Humidity reference_humidity = humidity_percent(50);
constexpr Speed reference_air_speed = metres_per_second(0.10);

/// One reference minute in the clock's fixed point; 64 bits hold four thousand years of them.
constexpr double units_per_minute = 4294967296.0;
/// Rounding may leave a coat short of a stage by this much without making it wait a minute more.
constexpr std::int64_t rounding_slack = 4295;  // a millionth of a minute
/// No coat needs as much as this.
constexpr double most_units = 4e18;

/// Source: the Arrhenius law; activation energies are the class's own.
double arrhenius_factor(MolarEnergy activation_energy, Temperature t) {
  return std::exp(-activation_energy.in(kilojoules_per_mole) / gas_constant *
                  (1.0 / t.in_kelvin() - 1.0 / reference_temperature.in_kelvin()));
}

/// Oxygen cure: full speed to 60 % RH, half speed from 90 % on, straight between. Source: assumed.
double oxidative_humidity_factor(Humidity humidity) {
  const double excess = (humidity - humidity_fraction(0.60)) / humidity_fraction(0.30);
  return 1.0 - 0.5 * std::clamp(excess, 0.0, 1.0);
}

/// Water leaves a dispersion film as from a wet surface, in proportion to the vapour deficit.
/// Source: constant-rate drying, van Mechelen 2014, who cites Croll and Keddie.
double vapour_deficit_factor(const AirState& air) {
  static const Pressure reference_deficit =
      saturation_pressure(reference_temperature) -
      vapour_pressure(reference_temperature, reference_humidity);
  return std::max(0.0, (saturation_pressure(air.temperature) - air.vapour) / reference_deficit);
}

/// The drying rate at the reference air speed.
double sheltered_rate(const DryingLaw& law, const AirState& air) {
  if (air.temperature < law.stops_below.value) return 0.0;
  double rate = law.driver == DryingLaw::Driver::vapour_deficit
                    ? vapour_deficit_factor(air)
                    : arrhenius_factor(law.activation_energy.value, air.temperature);
  if (law.slowed_by_humidity)
    rate *= oxidative_humidity_factor(relative_humidity(air.temperature, air.vapour));
  return rate;
}

/// The rate under the conditions for which the label's hours hold.
double label_rate(const Coating& coating) {
  return drying_rate(coating.law,
                     {coating.label_temperature,
                      vapour_pressure(coating.label_temperature, coating.label_humidity)},
                     reference_air_speed);
}

double film_exponent(const DryingLaw& law, Stage stage) {
  return law.film_exponents.at(static_cast<std::size_t>(depth_of(stage))).value;
}

/// Reference minutes by the trapezoid rule in fixed point: one sum for each minute of the series.
std::vector<std::int64_t> summed_progress(const DryingLaw& law, const AirSeries& air,
                                          Speed air_speed) {
  const Interval covers = air.covers();
  const double half_step =
      0.5 * units_per_minute * air_speed_factor(law.air_exponent.value, air_speed);
  const auto& nodes = air.nodes();
  std::vector<std::int64_t> sums{0};
  sums.reserve(static_cast<std::size_t>(covers.length().count()) + 1);
  double before = sheltered_rate(law, nodes.front().state);
  std::size_t next = 1;
  for (Instant at = covers.begin + Minutes(1); at <= covers.end; at += Minutes(1)) {
    while (nodes[next].at < at) ++next;
    const double rate = sheltered_rate(law, state_between(nodes[next - 1], nodes[next], at));
    sums.push_back(sums.back() + std::llround(half_step * (before + rate)));
    before = rate;
  }
  return sums;
}

/// Rule 1 of the trade: the clock may lengthen these waits, never shorten them. Source: practice.
constexpr bool label_is_floor(Stage stage) {
  return stage == Stage::handle || stage == Stage::recoat || stage == Stage::sand;
}

}  // namespace

double air_speed_factor(double exponent, Speed air_speed) {
  constexpr Speed natural_convection = metres_per_second(0.05);  // Source: assumed
  constexpr double limit = 2.0;  // late drying is limited from within; the figure is assumed
  const double ratio =
      (air_speed + natural_convection) / (reference_air_speed + natural_convection);
  return std::min(limit, std::pow(ratio, exponent));
}

double drying_rate(const DryingLaw& law, const AirState& air, Speed air_speed) {
  return sheltered_rate(law, air) * air_speed_factor(law.air_exponent.value, air_speed);
}

std::optional<Duration> drying_duration(const Coating& coating, Stage stage, const AirState& air,
                                        Speed air_speed, double film_ratio) {
  const auto& label = coating.label_after.at(index_of(stage));
  const double at_label = label_rate(coating);
  const double rate = drying_rate(coating.law, air, air_speed);
  if (!label || at_label <= 0.0 || rate <= 0.0) return std::nullopt;
  return label->value * (at_label / rate * std::pow(film_ratio, film_exponent(coating.law, stage)));
}

DryingClock::DryingClock(const Coating& coating, const AirSeries& air, Speed air_speed,
                         bool faster_than_label)
    : covers_(air.covers()), progress_(summed_progress(coating.law, air, air_speed)) {
  const double at_label = label_rate(coating);
  if (at_label <= 0.0) return;  // the label's hours say nothing about such a film
  // Rounded like the steps of the series, so that label conditions give the label's hours.
  const auto label_step = static_cast<double>(std::llround(units_per_minute * at_label));
  label_step_ = label_step;
  recoat_exponent_ = film_exponent(coating.law, Stage::recoat);
  label_is_least_ = !faster_than_label;
  for (std::size_t i = 0; i < stage_count; ++i) {
    const auto& label = coating.label_after.at(i);
    if (!label) continue;
    const auto stage = static_cast<Stage>(i);
    const bool floor = label_is_floor(stage) && !faster_than_label;
    needs_.push_back({.stage = stage,
                      .label = label->value,
                      .amount = label_step * label->value.in(minutes),
                      .film_exponent = film_exponent(coating.law, stage),
                      .at_least = floor ? whole_minutes_up(label->value) : Minutes(0)});
  }
  std::stable_sort(needs_.begin(), needs_.end(),
                   [](const Need& a, const Need& b) { return a.label < b.label; });
}

std::optional<DryingClock::Wait> DryingClock::wait_for(Stage stage, double film_ratio) const {
  double amount = 0.0;
  Minutes at_least{0};
  for (const Need& need : needs_) {
    amount = std::max(amount, need.amount * std::pow(film_ratio, need.film_exponent));
    at_least = std::max(at_least, need.at_least);
    if (need.stage == stage) {
      if (amount > most_units) return std::nullopt;
      return Wait{std::llround(amount), at_least};
    }
  }
  return std::nullopt;
}

std::size_t DryingClock::minute_of(Instant at) const {
  return static_cast<std::size_t>(std::max(Minutes(0), at - covers_.begin).count());
}

std::optional<std::size_t> DryingClock::minute_done(Instant applied, std::int64_t amount) const {
  if (applied > covers_.end) return std::nullopt;
  const auto start = progress_.begin() + static_cast<std::ptrdiff_t>(minute_of(applied));
  const auto done = std::lower_bound(start, progress_.end(), *start + amount);
  if (done == progress_.end()) return std::nullopt;
  return static_cast<std::size_t>(done - progress_.begin());
}

std::optional<Instant> DryingClock::reached(Stage stage, Instant applied, double film_ratio) const {
  const auto wait = wait_for(stage, film_ratio);
  return wait ? done(applied, *wait) : std::nullopt;
}

std::optional<Instant> DryingClock::dried_for(Duration label, Instant applied,
                                              double film_ratio) const {
  const double amount = label_step_ * label.in(minutes)*std::pow(film_ratio, recoat_exponent_);
  if (label_step_ <= 0.0 || amount > most_units) return std::nullopt;
  return done(applied,
              {std::llround(amount), label_is_least_ ? whole_minutes_up(label) : Minutes(0)});
}

std::optional<Instant> DryingClock::done(Instant applied, const Wait& wait) const {
  const auto minute = minute_done(applied, wait.amount - rounding_slack);
  if (!minute) return std::nullopt;
  const Instant by_clock = covers_.begin + Minutes(*minute);
  const Instant at = std::max(by_clock, applied + wait.at_least);
  if (at > covers_.end) return std::nullopt;
  return at;
}

std::optional<Duration> DryingClock::exact_duration(Stage stage, Instant applied,
                                                    double film_ratio) const {
  const auto wait = wait_for(stage, film_ratio);
  if (!wait) return std::nullopt;
  const auto done = minute_done(applied, wait->amount);
  if (!done) return std::nullopt;
  const std::size_t from = minute_of(applied);
  Duration until_done = to_duration(covers_.begin + Minutes(*done) - applied);
  if (*done > from) {
    const auto over = static_cast<double>(progress_[*done] - progress_[from] - wait->amount);
    const auto last_step = static_cast<double>(progress_[*done] - progress_[*done - 1]);
    until_done -= minutes(over / last_step);
  }
  return until_done;
}

}  // namespace tackfree
