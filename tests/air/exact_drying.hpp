// Exact drying: drying times that the clock gives in whole minutes, here not rounded.
#pragma once

#include "tackfree/air/drying_progress.hpp"
#include "tackfree/air/drying_rate.hpp"

#include <cmath>
#include <cstdint>
#include <optional>

namespace tackfree::testing {

/// The progress that a film which begins at `start` has made by `at`: the most that `progress`
/// reaches by then, found by halving.
inline std::int64_t done_between(const DryingProgress& progress, Instant start, Instant at) {
  if (at < start) return 0;
  std::int64_t done = 0, too_much = 1;
  const auto is_done = [&](std::int64_t amount) {
    const auto reached = progress.first_minute(start, amount);
    return reached && *reached <= at;
  };
  while (is_done(too_much)) too_much *= 2;
  while (too_much - done > 1) {
    const std::int64_t middle = done + (too_much - done) / 2;
    (is_done(middle) ? done : too_much) = middle;
  }
  return done;
}

/// How long from `start` until `amount` is done: straight within the last minute.
inline std::optional<Duration> exact_time(const DryingProgress& progress, Instant start,
                                          std::int64_t amount) {
  const auto minute = progress.first_minute(start, amount);
  if (!minute) return std::nullopt;
  const Duration until_minute = to_duration(*minute - start);
  if (amount <= 0) return until_minute;
  const std::int64_t done = done_between(progress, start, *minute);
  const std::int64_t before = done_between(progress, start, *minute - Minutes(1));
  return until_minute -
         minutes(static_cast<double>(done - amount) / static_cast<double>(done - before));
}

/// Time to a stage of the label in unchanging air, by the formula alone; nothing if it never dries
/// or the label has no such stage.
inline std::optional<Duration> drying_duration(const Coating& coating, Stage stage,
                                               const AirState& air, Speed air_speed,
                                               double film_ratio = 1.0) {
  const auto& label = coating.label_after.at(index_of(stage));
  if (!label) return std::nullopt;
  const double speed = StageRate(coating, stage).relative(air) *
                       air_speed_factor(coating.law.air_exponent.value, air_speed);
  if (speed <= 0.0) return std::nullopt;
  return label->value * (std::pow(film_ratio, film_exponent(coating.law, stage).value) / speed);
}

/// The same over a series, by the sums that the clock uses and without the label's floor, for a
/// coating whose other stages come no later.
inline std::optional<Duration> exact_duration(const Coating& coating, Stage stage,
                                              const AirSeries& air, Speed air_speed,
                                              Instant applied, double film_ratio = 1.0) {
  const StageRate rate(coating, stage);
  const DryingProgress progress([&rate](const HumidAir& at) { return rate.relative(at); },
                                rate_points(air),
                                air_speed_factor(coating.law.air_exponent.value, air_speed));
  const double amount =
      progress_per_minute *
      coating.label_after.at(index_of(stage))
          .value()
          .value.in(minutes)*std::pow(film_ratio, film_exponent(coating.law, stage).value);
  return exact_time(progress, applied, std::llround(amount));
}

}  // namespace tackfree::testing
