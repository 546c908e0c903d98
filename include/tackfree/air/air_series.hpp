// Air series: temperature and vapour pressure at any time of the plan, from what the person knows.
#pragma once

#include "tackfree/air/air_nodes.hpp"
#include "tackfree/air/indoor_air.hpp"
#include "tackfree/air/joined_air.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/model/air.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// A record of any kind as sources in order.
AirMix as_mix(const AirRecord& record);

/// The air over a stretch of time: nodes in order, both values linear between them. Constant air
/// has two nodes; rows have one each, and one at either end of the stretch.
class AirSeries {
 public:
  /// The air at `at`, which lies inside `covers()`; outside, the nearest end.
  AirState at(Instant at) const;
  /// The temperature of the boards, which is that of the air unless the job says how thick they
  /// are.
  Temperature surface_at(Instant at) const;
  /// Heat given by the heater from the beginning of the series on.
  Energy heat_until(Instant at) const;
  Interval covers() const;
  const std::vector<AirNode>& nodes() const { return nodes_; }
  /// The air outdoors that the room follows, from before the series on; empty where the air given
  /// is the room's own.
  const std::vector<AirNode>& outdoors() const { return outdoors_; }
  const std::vector<BridgedGap>& bridged() const { return bridged_; }
  const std::vector<AirSeam>& seams() const { return seams_; }
  const std::vector<HeldMonth>& held_months() const { return held_months_; }
  /// From here on the air is typical, not known: after the last row, or where months or a constant
  /// take over; nothing if what is known reaches the end.
  std::optional<Instant> typical_from() const { return typical_from_; }
  /// The end of all sources: after it the mean day of the last seven days repeats, 24 hours of UTC
  /// by 24 hours.
  std::optional<Instant> mean_day_from() const { return mean_day_from_; }

  /// The series over `span`; it covers just that. A row's dew point counts before its humidity.
  /// Rows that leave a gap of more than three hours inside the span, are out of order, begin after
  /// the span does, end before it begins, or lack a full day when they must be repeated, are
  /// Problems, and so is what joined_air reports. `readings` correct the air of the room around
  /// their hours, also from before the span as far back as the record says anything; see
  /// air_readings.hpp. `faster` is how a room that follows outdoors is aired; the room's own air
  /// stays as it is given.
  static std::optional<AirSeries> over(const AirRecord& record, Interval span, Problems& problems,
                                       const std::vector<AirReading>& readings = {},
                                       const std::vector<FasterLoss>& faster = {});

 private:
  /// What was measured in the room, and how fast it is forgotten.
  struct Read {
    std::vector<AirReading> readings;
    Duration fading;
  };
  void bring_indoors(const AirMix& mix, const std::vector<AirNode>& outdoors, Interval span,
                     const Read& read, const std::vector<FasterLoss>& faster);

  std::vector<AirNode> nodes_;
  std::vector<AirNode> outdoors_;
  std::vector<Temperature> boards_;  ///< at each node; empty: as the air
  std::vector<Energy> heat_;         ///< until each node; empty: no heater
  std::vector<BridgedGap> bridged_;
  std::vector<AirSeam> seams_;
  std::vector<HeldMonth> held_months_;
  std::optional<Instant> typical_from_;
  std::optional<Instant> mean_day_from_;
};

}  // namespace tackfree
