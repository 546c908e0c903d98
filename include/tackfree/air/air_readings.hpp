// Air readings: the air of the room corrected around the hours at which somebody measured it.
#pragma once

#include "tackfree/air/air_series.hpp"

#include <vector>

namespace tackfree {

/// How far to either side a reading still says something. Source: assumed.
inline constexpr Minutes reading_fades{6 * 60};

/// `nodes` moved by the difference between each reading and the account at its time: all of it at
/// the reading, fading on a straight line to nothing reading_fades before and after; between two
/// readings less than twice that apart, straight from one difference to the next. Temperature and
/// vapour pressure are moved apart, the latter by readings with a humidity, and never over
/// saturation. Readings outside the nodes' time are passed over; of two at one time the later one
/// in the list counts.
std::vector<AirSeries::Node> with_readings(std::vector<AirSeries::Node> nodes,
                                           const std::vector<AirReading>& readings);

/// The first time for which the record says anything; nothing where it holds for all times.
std::optional<Instant> known_from(const AirRecord& record);

}  // namespace tackfree
