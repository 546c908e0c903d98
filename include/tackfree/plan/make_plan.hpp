// Make plan: the pipeline, one stage a line.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/plan/stage_listener.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <optional>

namespace tackfree {

/// The plan of `job` as of `now`, rounded up to the planning grid. Nothing, with Problems, as for
/// make_work_at_hand. Throws std::logic_error when the schedule breaks a rule of the checker: that
/// is a bug. What the searches do is taken off `effort`; without one they may do most_effort.
std::optional<Plan> make_plan(const Job& job, Instant now, Problems& problems,
                              const StageListener& stage = {}, solver::Effort* effort = nullptr);

}  // namespace tackfree
