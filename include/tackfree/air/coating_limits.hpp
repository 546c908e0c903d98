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

/// In words, for "why not now": `too cold to coat`.
std::string_view word_for(Gate gate);

/// Where the rule behind a gate comes from: the origin of the limit's figure.
struct GateOrigin {
  Origin origin = Origin::assumed;
  std::string source;
};
GateOrigin origin_of(const CoatingLimits& limits, Gate gate);

/// The first rule that `air` breaks for putting a coat on boards of temperature `surface`, if any.
/// A limit itself is still allowed. Temperatures count for air and surface, the dew point for the
/// surface. Source: MIL-HDBK-1110 asks both of air and surface; so it is done for every class here.
std::optional<Gate> put_on_gate(const CoatingLimits& limits, const AirState& air,
                                Temperature surface);
/// The surface has the temperature of the air.
std::optional<Gate> put_on_gate(const CoatingLimits& limits, const AirState& air);

/// Is the surface less than the margin above the dew point?
bool near_dew_point(const CoatingLimits& limits, const AirState& air, Temperature surface);

/// How likely water condenses in a film that solvent cools as it leaves (lacquer, shellac).
enum class BlushRisk { none, some, high };

/// none: the air is at least 20 F (11.1 K) above its dew point; high: over 65 % RH; some: between.
/// Source: practice of finishers; the two figures do not agree, so both are used.
BlushRisk blush_risk(const AirState& air);

/// Answers for one coating, over the slots of a planning grid: may a coat start here?
///
/// The air is looked at where slots meet, `span.begin + i * grid`, and there only. Both ends of a
/// stretch count: the instants when the coat is started, finished, touch-dry (rounded up to the
/// grid) and at the end of the hold time. Touch-dry is that of the class's own film. What lies
/// beyond the span is not known: a hold time that reaches past it is judged up to its end.
class GateTable {
 public:
  GateTable(const CoatingLimits& limits, const AirSeries& air, const DryingClock& clock,
            Interval span, Minutes grid);

  /// The rule that forbids a coat which starts at slot `start` and takes `slots` to put on; nothing
  /// when it is allowed. A coat that is not touch-dry within the span is forbidden as
  /// cold_before_dry.
  std::optional<Gate> forbids(int start, int slots) const;

 private:
  // By instant of the grid, one more than there are slots.
  int slots_ = 0;
  std::vector<std::optional<Gate>> put_on_;
  /// The first bad instant at or after; put_on_cold is empty when there is no hold time.
  std::vector<int> next_unfit_, next_dew_, next_hold_, next_put_on_cold_;
  std::vector<int> touch_;  ///< when a coat finished here is touch-dry
  int hold_slots_ = 0;      ///< of cold_within_hold; 0 for none
};

}  // namespace tackfree
