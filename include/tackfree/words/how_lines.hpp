// How lines: how a step is done: the lines of the finishing data, and what this job adds to them.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// The lines of the operation's class and kind, and what becomes of the tool after it. `op` is one
/// of the plan's own operations.
std::vector<std::string> how_lines(const Plan& plan, const Operation& op);

}  // namespace tackfree
