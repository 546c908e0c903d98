// JSON fumes: the room's judgement, each airing and the proposed habit, as a member of the JSON
// plan.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `fumes` to the plan: an object, or null where the room was not judged.
void put_fumes(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
