// Coating limits: is the air fit for putting a coat on, and does it stay fit until touch-dry?
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying.hpp"
#include "tackfree/model/coating.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// A rule about the air that keeps a coat from being put on.
enum class Gate {
  too_cold,         ///< under the put-on minimum while coating
  too_warm,         ///< over the put-on maximum while coating
  too_humid,        ///< over the humidity maximum while coating
  dew,              ///< surface less than the margin above the dew point, until touch-dry
  cold_before_dry,  ///< falls under the hold minimum before touch-dry
  cold_within_hold  ///< falls under the put-on minimum within the hold time (waterborne, 24 h)
};
inline constexpr std::size_t gate_count = 6;

/// In words, for "why not now": `too cold to coat (under 10 C)`.
std::string_view word_for(Gate gate);

/// The first rule that `air` breaks for putting a coat on, if any.
std::optional<Gate> put_on_gate(const CoatingLimits& limits, const AirState& air);

/// Answers for one coating, over the slots of a planning grid: may a coat start here?
class GateTable {
 public:
  GateTable(const CoatingLimits& limits, const AirSeries& air, const DryingClock& clock,
            Interval span, Minutes grid);

  /// The rule that forbids a coat which starts at slot `start` and takes `slots` to put on; nothing
  /// when it is allowed. A coat that is not touch-dry within the span is forbidden as
  /// cold_before_dry.
  std::optional<Gate> forbids(int start, int slots) const;

 private:
  int slots_ = 0;
  std::vector<std::int8_t> put_on_;                           ///< by slot: -1 or a Gate
  std::vector<int> next_dew_, next_hold_, next_put_on_cold_;  ///< first bad slot at or after
  std::vector<int> touch_;  ///< slot at which a coat finished here is touch-dry
  int hold_slots_ = 0;      ///< of cold_within_hold; 0 for none
};

}  // namespace tackfree
