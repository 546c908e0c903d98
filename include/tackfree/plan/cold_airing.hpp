// Cold airing: how near the aired room comes to what its wet coats bear, in warmth and in dew.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/fumes/room_judgement.hpp"

#include <optional>

namespace tackfree {

/// The moments of wet coats that come nearest to what they bear, or are farthest under it.
struct ColdAiring {
  Temperature room, bears;
  Instant at;
  TemperatureDifference spread, margin;  ///< of the boards over the dew point, and what it must be
  Instant dew_at;
  bool with_airing = false;  ///< counts the outdoor air let in; else the air as given

  bool too_cold() const { return room < bears; }
  bool dewy() const { return spread < margin - kelvins(1e-6); }  // at the margin is rounding
};

/// Each coat that is aired is followed in `air` from its beginning, or the schedule's, until it is
/// touch-dry, and for as long as it must not fall under its putting-on temperature. Nothing without
/// an airing.
std::optional<ColdAiring> coldest_airing(const Job& job, const OperationList& list,
                                         const AirSeries& air, const Schedule& schedule,
                                         const RoomJudgement& room);

}  // namespace tackfree
