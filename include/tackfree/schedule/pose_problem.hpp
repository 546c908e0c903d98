// Pose problem: operations, clocks, limits and calendars as a scheduling problem in slots.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying.hpp"
#include "tackfree/schedule/posed_problem.hpp"

#include <vector>

namespace tackfree {

/// Goals are the light use of every batch. A batch's "ready by" closes all later ends of its last
/// coats.
PosedProblem pose_problem(const Job& job, const OperationList& list, const AirSeries& air,
                          const std::vector<DryingClock>& clocks, Interval span);

}  // namespace tackfree
