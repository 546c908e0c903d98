// Make work at hand: a job with its log, up to where it is dated, one stage a line.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <optional>

namespace tackfree {

/// The work on `job` as of `now`, rounded up to the planning grid: areas, litres, air, and the
/// operations with what the log says of them. Lines of the log that do not fit the job are left out
/// of its history. Nothing, with Problems, where the air does not cover the plan, or the plan would
/// be too large. What the searches for early coats do is taken off `effort`; without one they may
/// do most_effort.
std::optional<WorkAtHand> make_work_at_hand(const Job& job, Instant now, Problems& problems,
                                            solver::Effort* effort = nullptr);

}  // namespace tackfree
