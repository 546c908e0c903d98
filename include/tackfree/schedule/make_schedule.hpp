// Make schedule: operations, air and calendar into a solver problem, and its answer into dates.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

/// One drying clock for each of Job::coatings.
std::vector<DryingClock> drying_clocks(const Job& job, const AirSeries& air);

/// Dates every operation, or says why it cannot be placed. `span` starts at the plan's now.
Schedule make_schedule(const Job& job, const OperationList& list, const AirSeries& air,
                       const std::vector<DryingClock>& clocks, Interval span);

}  // namespace tackfree
