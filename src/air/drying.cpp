#include "tackfree/air/drying.hpp"

#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

/// Rounding may leave a coat short of a stage by this much without making it wait a minute more:
/// a year has 105 120 rate steps, each rounded by half a unit at most.
constexpr std::int64_t rounding_slack = 65536;  // 1.5e-5 minutes
/// No coat needs as much as this.
constexpr double most_units = 4e18;

std::shared_ptr<const DryingProgress> progress_by_law(const DryingLaw& law,
                                                      const RatePoints& points, Speed air_speed) {
  return std::make_shared<const DryingProgress>(
      ShelteredRate(law), points, air_speed_factor(law.air_exponent.value, air_speed));
}

bool dries_alike(const DryingLaw& a, const DryingLaw& b) {
  return a.driver == b.driver && a.activation_energy.value == b.activation_energy.value &&
         a.q10.has_value() == b.q10.has_value() && (!a.q10 || a.q10->value == b.q10->value) &&
         a.slowed_by_humidity == b.slowed_by_humidity &&
         a.air_exponent.value == b.air_exponent.value && a.stops_below.value == b.stops_below.value;
}

/// The rate under the conditions for which the label's hours hold.
double label_rate(const Coating& coating) {
  const Temperature t = coating.label_temperature;
  return ShelteredRate(coating.law)({t, vapour_pressure(t, coating.label_humidity)});
}

/// The shortest time that the label names for a stage.
Duration shortest_on_label(const Coating& coating, Stage stage) {
  Duration shortest = coating.label_after.at(index_of(stage))->value;
  for (const LabelPoint& point : coating.label_points.at(index_of(stage)))
    shortest = std::min(shortest, point.after);
  return shortest;
}

}  // namespace

bool label_is_floor(Stage stage) {
  return stage == Stage::handle || stage == Stage::recoat || stage == Stage::sand;
}

DryingClock::DryingClock(const Coating& coating, const AirSeries& air, Speed air_speed,
                         bool faster_than_label)
    : DryingClock(drying_clocks({coating}, air, air_speed, faster_than_label).front()) {}

DryingClock::DryingClock(const Coating& coating, Speed air_speed, bool faster_than_label,
                         const RatePoints& points, Progress by_law)
    : covers_{points.points.front().at, points.points.back().at},
      tracks_{std::move(by_law)},
      label_is_least_(!faster_than_label) {
  if (label_rate(coating) <= 0.0) return;  // the label's hours say nothing about such a film
  label_step_ = progress_per_minute * label_rate(coating);
  slowness_ = coating.slowness;
  recoat_exponent_ = film_exponent(coating.law, Stage::recoat).value;
  for (std::size_t i = 0; i < stage_count; ++i)
    if (coating.label_after.at(i)) add_need(coating, static_cast<Stage>(i), points, air_speed);
  std::stable_sort(needs_.begin(), needs_.end(),
                   [](const Need& a, const Need& b) { return a.label < b.label; });
  note_plain_needs();
}

void DryingClock::note_plain_needs() {
  PlainNeed so_far;
  for (const Need& need : needs_) {
    const auto amount = amount_of(need, 1.0);
    if (need.track != 0 || !amount) return;
    so_far.amount = std::max(so_far.amount, *amount);
    so_far.at_least = std::max(so_far.at_least, need.at_least);
    plain_.at(index_of(need.stage)) = so_far;
  }
}

void DryingClock::add_need(const Coating& coating, Stage stage, const RatePoints& points,
                           Speed air_speed) {
  const bool has_rows = !coating.label_points.at(index_of(stage)).empty();
  if (has_rows) {
    const StageRate rate(coating, stage);
    tracks_.push_back(std::make_shared<const DryingProgress>(
        [&rate](const HumidAir& air) { return rate.relative(air); }, points,
        air_speed_factor(coating.law.air_exponent.value, air_speed)));
  }
  const double label_step = has_rows ? progress_per_minute : label_step_;
  const Duration label = coating.label_after.at(index_of(stage))->value;
  const bool floor = label_is_floor(stage) && label_is_least_;
  needs_.push_back(
      {.stage = stage,
       .label = label,
       .track = has_rows ? tracks_.size() - 1 : 0,
       .amount = coating.slowness * label_step * label.in(minutes),
       .film_exponent = film_exponent(coating.law, stage).value,
       .at_least = floor ? whole_minutes_up(shortest_on_label(coating, stage)) : Minutes(0)});
}

std::optional<std::int64_t> DryingClock::amount_of(const Need& need, double film_ratio) {
  const double amount =
      film_ratio == 1.0 ? need.amount : need.amount * power(film_ratio, need.film_exponent);
  if (amount > most_units) return std::nullopt;
  return std::llround(amount);
}

bool DryingClock::has(Stage stage) const {
  return std::any_of(needs_.begin(), needs_.end(),
                     [&](const Need& need) { return need.stage == stage; });
}

std::optional<Instant> DryingClock::reached(Stage stage, Instant applied, double film_ratio) const {
  const auto by_law = [&](std::int64_t amount, Instant at_least) -> std::optional<Instant> {
    const auto done = tracks_.front()->first_minute(applied, amount - rounding_slack);
    if (!done || std::max(*done, at_least) > covers_.end) return std::nullopt;
    return std::max(*done, at_least);
  };
  const auto& plain = plain_.at(index_of(stage));
  if (plain && film_ratio == 1.0) return by_law(plain->amount, applied + plain->at_least);
  if (!has(stage)) return std::nullopt;
  Instant at = applied;
  std::int64_t most_by_law = 0;
  for (const Need& need : needs_) {
    const auto amount = amount_of(need, film_ratio);
    if (!amount) return std::nullopt;
    if (need.track == 0) {
      most_by_law = std::max(most_by_law, *amount);
    } else {
      const auto done = tracks_[need.track]->first_minute(applied, *amount - rounding_slack);
      if (!done) return std::nullopt;
      at = std::max(at, *done);
    }
    at = std::max(at, applied + need.at_least);
    if (need.stage == stage) break;
  }
  return by_law(most_by_law, at);
}

std::optional<Instant> DryingClock::dried_for(Duration label, Instant applied,
                                              double film_ratio) const {
  const double amount =
      slowness_ * label_step_ * label.in(minutes)*power(film_ratio, recoat_exponent_);
  if (label_step_ <= 0.0 || amount > most_units) return std::nullopt;
  const auto done = tracks_.front()->first_minute(applied, std::llround(amount) - rounding_slack);
  if (!done) return std::nullopt;
  const Minutes at_least = label_is_least_ ? whole_minutes_up(label) : Minutes(0);
  const Instant at = std::max(*done, applied + at_least);
  return at > covers_.end ? std::nullopt : std::optional(at);
}

std::vector<DryingClock> drying_clocks(const std::vector<Coating>& coatings, const AirSeries& air,
                                       Speed air_speed, bool faster_than_label) {
  const RatePoints points = rate_points(air);
  std::vector<DryingClock> clocks;
  for (std::size_t i = 0; i < coatings.size(); ++i) {
    DryingClock::Progress by_law;
    for (std::size_t j = 0; j < i && !by_law; ++j)
      if (dries_alike(coatings[j].law, coatings[i].law)) by_law = clocks[j].tracks_.front();
    if (!by_law) by_law = progress_by_law(coatings[i].law, points, air_speed);
    clocks.push_back(
        DryingClock(coatings[i], air_speed, faster_than_label, points, std::move(by_law)));
  }
  return clocks;
}

}  // namespace tackfree
