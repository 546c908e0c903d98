// JSON fumes: the judgement of the room, each airing and the proposed habit.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `fumes` to the plan: an object, or null where the room was not judged.
void put_fumes(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
