// Check schedule: every rule tested again from the job and the dated steps alone.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// The rules that the schedule breaks, one sentence each; empty when it keeps them all. It shares
/// no code with the scheduler: drying is integrated anew, minute by minute, in floating point, and
/// calendars are read from the job.
std::vector<std::string> broken_rules(const Job& job, const OperationList& list,
                                      const AirSeries& air, const Schedule& schedule);

}  // namespace tackfree
