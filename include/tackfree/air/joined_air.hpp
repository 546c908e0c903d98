// Joined air: several accounts of the air put one after another, with the seams between them.
#pragma once

#include "tackfree/air/air_nodes.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/model/air.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// A stretch without rows that was bridged by a straight line.
struct BridgedGap {
  Interval gap;
};
/// A source of the air: its name, or the month whose typical values it begins with (1 to 12) where
/// typical months have none.
struct NamedSource {
  std::string name;
  unsigned typical_month = 0;
};
/// Where one source ends and the next one takes over.
struct AirSeam {
  Instant at;
  NamedSource before, after;
};
/// A month, 1 to 12, without typical values of its own, and the one whose values it has.
struct HeldMonth {
  unsigned month = 0, held = 0;
  friend bool operator==(const HeldMonth&, const HeldMonth&) = default;
};

struct JoinedAir {
  std::vector<AirNode> nodes;  ///< may begin before the span and end after it
  std::vector<BridgedGap> bridged;
  std::vector<AirSeam> seams;
  std::vector<HeldMonth> held_months;    ///< that the span comes to, in order
  std::optional<Instant> typical_from;   ///< from here on nothing is known of these very days
  std::optional<Instant> mean_day_from;  ///< from here on the mean day of the last seven repeats
};

/// The sources of `mix`, each from where the one before ends, over at least `span`. Faults of rows,
/// gaps of more than three hours, months of which none is given, and air that does not reach the
/// start of the span are Problems.
std::optional<JoinedAir> joined_air(const AirMix& mix, Interval span, Problems& problems);

}  // namespace tackfree
