// Cut short: a problem without the late part of its horizon that no schedule ready in time touches.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

namespace tackfree::solver {

/// A horizon within which, if there is a schedule that is ready by `target`, there is one, and none
/// is ready as soon with fewer sessions beyond it. Work that a goal waits for ends in it; plain
/// work that none waits for has time in it when all else is done.
Slot horizon_for(const SchedulingProblem& problem, Slot target);

/// The same problem with a shorter horizon: the same schedules, but for those that go beyond it.
SchedulingProblem cut_short(const SchedulingProblem& problem, Slot horizon);

}  // namespace tackfree::solver
