// Indoor air: a room that follows outdoors, is heated at times, and boards that follow it.
#pragma once

#include "tackfree/air/air_nodes.hpp"
#include "tackfree/model/air.hpp"

#include <vector>

namespace tackfree {

/// A first-order lag behind something that moves straight from `from` to `to` in `step`, exactly:
/// dT/dt = (To - T) / tau. Source: the closed solution of that equation; of the model itself, the
/// usual one of lumped heat capacity.
Temperature lagged(Temperature start, Temperature from, Temperature to, Duration step,
                   Duration time_constant);

/// A time in which the room loses heat so many times as fast as usual, as when it is aired. Several
/// stand in order and do not overlap.
struct FasterLoss {
  Interval time;
  double times = 1;
  friend bool operator==(const FasterLoss&, const FasterLoss&) = default;
};

/// The air in the room every five minutes, and the heat it took since the first node.
struct IndoorNode {
  AirNode node;
  Energy heat;
};

/// Indoors from outdoors, over the whole of `outdoors`. The room begins at the mean of the first
/// day outdoors. Outdoor water comes in with the air: the vapour pressure is that outdoors, but
/// never over saturation, nor, but for times of faster loss, over the ceiling of a dehumidifier,
/// which outdoor air coming in overwhelms (assumed). Water from drying coats is left
/// out.
std::vector<IndoorNode> indoor_air(const std::vector<AirNode>& outdoors, const Indoors& indoors,
                                   const std::vector<FasterLoss>& faster = {});

/// The same air by nodes so close that what follows it by minutes can be drawn straight between
/// them.
std::vector<AirNode> every_five_minutes(const std::vector<AirNode>& nodes);

/// How far boards are behind the air: rho c L / (2 h), for boards that air reaches on both sides.
/// Source: lumped heat capacity; 500 kg/m3, 1600 J/(kg K) and 8 W/(m2 K) from memory.
Duration board_time_constant(Length thickness);

/// The temperature of the boards at each node of `room`, from `start` on at the first.
std::vector<Temperature> board_temperatures(const std::vector<AirNode>& room, Temperature start,
                                            Length thickness);

}  // namespace tackfree
