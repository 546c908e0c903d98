// Recoat limits: coats that are to go on unsanded come before the window of the coat below shuts.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/schedule/posed_problem.hpp"

namespace tackfree {

/// Adds a maximum lag for each coat with Operation::window_to_spare over an unsanded coat of its
/// side; over a coat that is on already, its later starts are closed. The window ends by the
/// warmest hour since, as for the coats that miss it.
void add_recoat_limits(const Job& job, const OperationList& list, const AirSeries& air,
                       PosedProblem& posed);

}  // namespace tackfree
