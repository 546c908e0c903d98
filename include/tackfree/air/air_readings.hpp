// Air readings: the air of the room corrected around the hours at which somebody measured it.
#pragma once

#include "tackfree/air/air_nodes.hpp"
#include "tackfree/model/air.hpp"

#include <vector>

namespace tackfree {

/// `nodes` moved by the difference between each reading and the account at its time. All of it
/// counts at the reading; before and after it fades exponentially with the room's own
/// `time_constant`, as a first-order lag forgets. Between two readings it is what is expected of a
/// difference that forgets both ways. Temperature and vapour pressure are moved apart, the latter
/// by readings with a humidity, and never over saturation. Before the first node the account is as
/// there; readings after the last one are passed over. Of two at one time the later one in the list
/// counts. Source of the course between readings: the mean of a Gaussian process with exponential
/// covariance, C. E. Rasmussen, C. K. I. Williams, Gaussian Processes for Machine Learning, 2006,
/// secs. 2.2 and 4.2.1 (from memory). That the water in the air fades with it: assumed.
std::vector<AirNode> with_readings(std::vector<AirNode> nodes,
                                   const std::vector<AirReading>& readings, Duration time_constant);

/// How fast a reading's difference fades: the lag of a room that follows outdoors; else, for the
/// room's own rows and for constant air, usual_time_constant (assumed: such a room is no other).
Duration fading_of(const AirRecord& record);

/// The first time for which the record says anything; nothing where it holds for all times.
std::optional<Instant> known_from(const AirRecord& record);

}  // namespace tackfree
