// JSON left over: what stays in the tins, until when it keeps, and how to get rid of the rest.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// Puts `left_over` into the document.
void put_left_over(nlohmann::ordered_json& document, const Plan& plan);

}  // namespace tackfree
