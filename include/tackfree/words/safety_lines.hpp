// Safety lines: what can hurt at a piece of work, a line each, for where the work itself stands.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace tackfree {

/// `WARNING: Rags wet with oil heat themselves as they dry. Never in a pile.`: every DANGER and
/// WARNING of the plan that these steps call for, the gravest first. `steps` are indices into
/// Schedule::steps. Sanding calls for the dust's, wiping off for the rags', a coat for those of its
/// coating and its method and of an attached house. What holds for the job whole, such as children,
/// stands at the top of the plan.
std::vector<std::string> safety_lines(const Plan& plan, const std::vector<std::size_t>& steps);

}  // namespace tackfree
