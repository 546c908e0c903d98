// JSON air: what the plan knows of the air, its sources, room and boards, for the JSON plan.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `air` to the plan.
void put_air(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
