// Fluid bound: a slot before which no schedule can be ready, for problems of any size.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

namespace tackfree::solver {

/// No schedule is ready before this slot; never when none is within the horizon. Two relaxations:
/// every line of work alone, without workers and space; and work that flows like water: by each
/// slot, what must be done by then to be ready in time is no more than what the workers can do in
/// the hours in which any work may be done.
Slot fluid_bound(const SchedulingProblem& problem);

}  // namespace tackfree::solver
