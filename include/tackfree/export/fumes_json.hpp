// JSON fumes: the judgement of the room, each airing, the proposed habit, and what must be off.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `fumes` to the plan: an object, or null where the room was not judged.
void put_fumes(nlohmann::ordered_json& document, const Plan& plan);

/// Adds `ignition`: what is off by name, when vapour that burns may be in the room, and the hours
/// in which the job's own heater runs then.
void put_ignition(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
