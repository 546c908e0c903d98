// Drying explained: why a stage takes as long as it does, as factors that multiply out to the wait.
#pragma once

#include "tackfree/air/drying.hpp"

#include <optional>
#include <string>

namespace tackfree {

/// A factor of the time, over 1 where it takes longer, and where the rule behind it comes from.
using TimeFactor = Sourced<double>;

/// The wait of one coat for one stage: label time x the six factors. The rate changes over the
/// wait, so the factors are those of its mean: temperature first, then humidity at those
/// temperatures.
struct DryingExplanation {
  Stage stage = Stage::touch;
  Sourced<Duration> label;
  std::optional<Duration> label_least;  ///< where the label gives a range
  TimeFactor temperature, humidity, film, air_movement;
  TimeFactor slowness{1.0, Origin::measured, {}};  ///< 1 unless the log has taught otherwise
  /// What the label's hours as a floor, an earlier stage, or rounding to the minute add.
  TimeFactor held;
  double outside_label = 0;  ///< share of the wait at temperatures outside the label's rows
  Instant begins, ends;
  Duration wait() const { return to_duration(ends - begins); }
};

/// Nothing when the label has no such stage or it is not reached within the series.
std::optional<DryingExplanation> explained(const Coating& coating, Stage stage,
                                           const AirSeries& air, Speed air_speed,
                                           const DryingClock& clock, Instant applied,
                                           double film_ratio = 1.0);

}  // namespace tackfree
