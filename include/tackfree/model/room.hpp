// Room: where the work is done and what in it matters to vapour and fire.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/airing.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

struct Room {
  std::string name;
  std::optional<Volume> volume;
  bool attached_to_house = true;
  std::vector<std::string> ignition_sources;  ///< in the person's words: `water heater`
  std::optional<AiringHabit> airing;          ///< nothing given: it counts as closed all the time
  std::optional<Fan> fan;
  Speed air_speed = metres_per_second(0.10);  ///< over the work; 0.10 is a sheltered room
};

}  // namespace tackfree
