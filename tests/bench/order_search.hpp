// Order search: any problem, by searching the orders in which activities start; the tests' oracle.
#pragma once

#include "tackfree/solver/proof_search.hpp"
#include "tackfree/solver/scheduling_problem.hpp"

#include <cstdint>
#include <optional>

namespace tackfree::solver {

/// A schedule and what is proved of it, for problems whose products need no set-up and no clean-up
/// and whose workers are always there; nothing for others. Lists of activities are decoded and
/// changed at random (with a fixed seed) to find a good schedule; then orders of starts are
/// searched in depth for one that is ready sooner. Given the order, the least starts are best (see
/// order_timing.hpp), so no times are searched. When the search in depth ends, what it did not find
/// does not exist. `most_steps` counts activities placed. Sessions are counted, not minimised.
std::optional<Searched> best_by_order(const SchedulingProblem& problem, const Solution& known,
                                      std::int64_t most_steps);

}  // namespace tackfree::solver
