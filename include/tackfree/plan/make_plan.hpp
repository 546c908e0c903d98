// Make plan: the pipeline, one stage a line.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <cstddef>
#include <functional>
#include <optional>

namespace tackfree {

enum class PlanningStage {
  air_areas_litres,
  dates,
  fewer_sessions,
  waits,
  fumes,
  tins_and_sundries,
  check
};

/// What is being worked out.
struct PlanningNow {
  PlanningStage stage = PlanningStage::air_areas_litres;
  std::size_t sessions = 0;  ///< fewer than these are looked for (fewer_sessions)
};

/// Is told what is being worked out, as it begins.
using StageListener = std::function<void(const PlanningNow& now)>;

/// The plan up to where it is scheduled: areas, litres, air, and the operations with what the log
/// says of them. Lines of the log that do not fit the job are left out of its history. Nothing,
/// with Problems, where the air does not cover the plan. What the searches for early coats do is
/// taken off `effort`.
std::optional<Plan> make_standing(Job job, Instant now, Problems& problems,
                                  solver::Effort* effort = nullptr);

/// The plan of `job` as of `now`, rounded up to the planning grid. Nothing, with Problems, as for
/// make_standing. Throws std::logic_error when the schedule breaks a rule of the
/// checker: that is a bug. What the searches do is taken off `effort`; without one they may do
/// most_effort.
std::optional<Plan> make_plan(Job job, Instant now, Problems& problems,
                              const StageListener& stage = {}, solver::Effort* effort = nullptr);

/// The first stage alone: a plan with the areas of `job` and the notes on its parts.
Plan make_area_plan(Job job);

}  // namespace tackfree
