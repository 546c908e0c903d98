// Cold airing: how cold the room gets while it is aired, against what its wet coats bear.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/fumes/room_judgement.hpp"

#include <optional>

namespace tackfree {

/// The moment of an airing that comes nearest to what the coats bear until touch-dry, or is
/// farthest under it.
struct ColdAiring {
  Temperature room, bears;
  Instant at;
  bool with_airing = false;  ///< `room` has the outdoor air in it; else it is the room's own air
};

/// Where the job says how the room follows outdoors and what heat it loses, the air that its
/// openings let in counts: 0.333 Wh/(m3 K) of the flow beyond the closed room's. Source: ISO 13789,
/// heat capacity of air per volume 1200 J/(m3 K) (from memory). Where it says no loss, an aired
/// room is as cold as outdoors, which errs towards cold. Else the air given is taken as it is.
/// Nothing without an airing.
std::optional<ColdAiring> coldest_airing(const Job& job, const OperationList& list,
                                         const AirSeries& air, const Schedule& schedule,
                                         const RoomJudgement& room);

}  // namespace tackfree
