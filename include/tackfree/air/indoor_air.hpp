// Indoor air: a room that follows outdoors, is heated at times, and boards that follow it.
#pragma once

#include "tackfree/air/air_series.hpp"

#include <vector>

namespace tackfree {

/// A first-order lag behind something that moves straight from `from` to `to` in `step`, exactly:
/// dT/dt = (To - T) / tau. Source: the closed solution of that equation; of the model itself, the
/// usual one of lumped heat capacity.
Temperature lagged(Temperature start, Temperature from, Temperature to, Duration step,
                   Duration time_constant);

/// The air in the room every five minutes, and the heat it took since the first node.
struct IndoorNode {
  AirSeries::Node node;
  Energy heat;
};

/// Indoors from outdoors, over the whole of `outdoors`. The room begins at the mean of the first
/// day outdoors. Outdoor water comes in with the air: the vapour pressure is that outdoors, but
/// never over saturation, nor, but for times of faster loss, over the ceiling of a dehumidifier,
/// which outdoor air coming in overwhelms (assumed). Water from drying coats is left
/// out.
std::vector<IndoorNode> indoor_air(const std::vector<AirSeries::Node>& outdoors,
                                   const Indoors& indoors,
                                   const std::vector<FasterLoss>& faster = {});

/// The same air by nodes so close that what follows it by minutes can be drawn straight between
/// them.
std::vector<AirSeries::Node> every_five_minutes(const std::vector<AirSeries::Node>& nodes);

/// How far boards are behind the air: rho c L / (2 h), for boards that air reaches on both sides.
/// Source: lumped heat capacity; 500 kg/m3, 1600 J/(kg K) and 8 W/(m2 K) from memory.
Duration board_time_constant(Length thickness);

/// The temperature of the boards at each node of `room`, from `start` on at the first.
std::vector<Temperature> board_temperatures(const std::vector<AirSeries::Node>& room,
                                            Temperature start, Length thickness);

}  // namespace tackfree
