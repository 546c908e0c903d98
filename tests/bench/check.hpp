// Check: every rule of a scheduling problem tested against a solution, without the solver's code.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <string>
#include <vector>

namespace tackfree::solver {

/// The rules that the solution breaks, one sentence each. Activities that are not placed break
/// none.
std::vector<std::string> violations(const SchedulingProblem& problem, const Solution& solution);

}  // namespace tackfree::solver
