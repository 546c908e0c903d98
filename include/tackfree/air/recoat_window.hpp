// Recoat window: how long a coat may be recoated without sanding, by the warmest hour since.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/model/coating.hpp"

#include <optional>

namespace tackfree {

/// The longest wait for recoating without sanding when the warmest hour had `warmest`: the label's,
/// shortened as the law of the class quickens drying; never longer than the label's. Nothing for a
/// coating that has no such limit.
std::optional<Duration> longest_unsanded(const Coating& coating, Temperature warmest);

/// Does a coat that has been on for so long still take another one unsanded? Exactly at the end of
/// the window it does. The one comparison of the planner and of the checker.
bool takes_unsanded(Minutes since, Duration window);

/// The last five minutes' step at which a coat of `applied` may still be recoated without sanding;
/// the end of the series at the latest. Nothing as above. What counts is the highest temperature
/// of the boards that lasted for an hour since. Source: UFGS 09971, note on its recoat table: the
/// highest surface temperature sustained for one hour or more between coats.
std::optional<Instant> recoat_unsanded_until(const Coating& coating, const AirSeries& air,
                                             Instant applied);

}  // namespace tackfree
