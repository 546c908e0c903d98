// JSON areas: parts with their surfaces by side and grain, as members of a JSON document.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `area_m2` and `parts`.
void put_areas(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
