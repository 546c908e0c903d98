// Dried share: how much of the drying that a stage asks for a coat has had by a given hour.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/model/coating.hpp"

#include <optional>

namespace tackfree {

/// A coat on its way to a stage.
struct DryingCoat {
  const Coating* coating = nullptr;
  Stage stage = Stage::sand;
  double film_ratio = 1.0;  ///< wet film over the class's own
  Instant applied;
};

/// 1 when the clock of the label, without what the log has taught, has it reach the stage: rates
/// summed minute by minute. Nothing where the label has no such stage. Before `applied` it is 0.
std::optional<double> dried_share(const DryingCoat& coat, const AirSeries& air, Speed air_speed,
                                  Instant at);

/// The first whole minute at which the share is `share` or more; nothing within the series.
std::optional<Instant> share_reached(const DryingCoat& coat, const AirSeries& air, Speed air_speed,
                                     double share);

}  // namespace tackfree
