// Make schedule: operations, air and calendar into a solver problem, and its answer into dates.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace tackfree {

/// One drying clock for each of Job::coatings.
std::vector<DryingClock> drying_clocks(const Job& job, const AirSeries& air);

/// Dates every operation, or says why it cannot be placed. What is done stands where the log has
/// it, and what follows waits for it from there. Among equally good schedules (as soon ready, in as
/// few sessions, with as little late work) the steps stay where Operation::starts_last has them.
/// `span` starts at the plan's now. What the searches do is taken off `effort`.
Schedule make_schedule(const Job& job, const OperationList& list, const AirSeries& air,
                       const std::vector<DryingClock>& clocks, Interval span,
                       solver::Effort* effort = nullptr);

/// The answer to whether it can be done in fewer sessions.
struct FewerSessions {
  std::optional<Schedule> schedule;  ///< nothing: none was found
  bool none = false;                 ///< proved: there is none
};

/// The schedule that is ready soonest of those in `most_sessions` or fewer. Every due date is kept.
FewerSessions schedule_in_sessions(const Job& job, const OperationList& list, const AirSeries& air,
                                   const std::vector<DryingClock>& clocks, Interval span,
                                   std::size_t most_sessions, solver::Effort* effort = nullptr);

}  // namespace tackfree
