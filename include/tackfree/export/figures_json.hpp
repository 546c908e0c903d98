// JSON figures: every figure a plan rests on, with its origin and source, for the JSON plan.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Adds `coatings`, `methods`, `labour`, `grain` and `need` to the plan. Each figure is an object
/// of value, origin and source.
void put_figures(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
