// Closed days: on how many of the days with working hours which rule keeps a step out.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/schedule/posed_problem.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/solver/scheduling_problem.hpp"

namespace tackfree {

/// Counts `work_days` and `closed` of a step that `solution` does not place, by days of `zone`. A
/// day is closed where the step may start in none of its working hours, and goes by the rule that
/// closes most of them; the end of the hours counts only where nothing else is left. What done work
/// asks for counts as a wait.
void count_closed_days(const PosedProblem& posed, const solver::Solution& solution,
                       const Zone& zone, Unplaced& unplaced);

}  // namespace tackfree
