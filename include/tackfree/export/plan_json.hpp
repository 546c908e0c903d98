// JSON: the whole plan for other programs, in SI and metric keys that wear their unit.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// The plan as docs/plan.schema.json describes it: version key `tackfree_plan`, indented by two,
/// with a final newline. Same plan, same bytes. Bytes of names that are no UTF-8 become U+FFFD.
std::string json_report(const Plan& plan);

/// What to buy alone, as docs/buy.schema.json describes it: version key `tackfree_buy`, the plan's
/// own `shopping` and the figures it rests on.
std::string json_shopping_list(const Plan& plan);

}  // namespace tackfree
