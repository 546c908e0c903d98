// Conflict: the fewest kinds of rule that cannot hold together, found by taking each away.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

/// Adds to each step without time that waits for no other which of the person's rules are in each
/// other's way: with any one of them taken away it has a time, the rest unchanged. Rules are taken
/// away one after another for good as long as the step stays without time; what is left is the
/// conflict. Nothing is added where that is a single rule, which `why` has named already. Only the
/// first three such steps are looked into.
void name_conflicts(const Job& job, const OperationList& list, const AirSeries& air,
                    const std::vector<DryingClock>& clocks, Schedule& schedule);

}  // namespace tackfree
