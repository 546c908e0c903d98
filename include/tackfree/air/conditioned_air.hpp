// Conditioned air: the air of a room that the person warms or dries for a time.
#pragma once

#include "tackfree/air/air_nodes.hpp"
#include "tackfree/model/air.hpp"

#include <vector>

namespace tackfree {

/// `room` with what is done to it, coming and going within five minutes. Warming leaves
/// the vapour pressure as it is, so warmer air is relatively drier; drying takes points of relative
/// humidity off at the temperature there is, down to 5 %. Source: of the first, that a heater
/// without a flame adds no water; that the room is warm at once is assumed.
std::vector<AirNode> conditioned_air(const std::vector<AirNode>& room,
                                     const std::vector<ConditionedAir>& conditioned);

}  // namespace tackfree
