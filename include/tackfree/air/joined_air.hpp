// Joined air: several accounts of the air put one after another, with the seams between them.
#pragma once

#include "tackfree/air/air_series.hpp"

#include <optional>
#include <vector>

namespace tackfree {

struct JoinedAir {
  std::vector<AirSeries::Node> nodes;  ///< may begin before the span and end after it
  std::vector<AirSeries::Bridged> bridged;
  std::vector<AirSeries::Seam> seams;
  std::optional<Instant> typical_from;   ///< from here on nothing is known of these very days
  std::optional<Instant> mean_day_from;  ///< from here on the mean day of the last seven repeats
};

/// The sources of `mix`, each from where the one before ends, over at least `span`. Faults of rows,
/// gaps of more than three hours, months that are missing, and air that does not reach the start of
/// the span are Problems.
std::optional<JoinedAir> joined_air(const AirMix& mix, Interval span, Problems& problems);

}  // namespace tackfree
