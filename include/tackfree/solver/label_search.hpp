// Label search: schedules proved best, from partial schedules compared by how far each chain is.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <cstdint>
#include <optional>

namespace tackfree::solver {

/// A schedule and what is proved of it.
struct Searched {
  Solution solution;
  Slot ready_bound = 0;          ///< no schedule is ready before this slot
  bool ready_proved = false;     ///< this one is ready then
  bool sessions_proved = false;  ///< and no schedule ready then has fewer sessions
  std::int64_t labels = 0;       ///< partial schedules made
};

/// The best schedule by `worth` within a limit on partial schedules, so that the answer does not
/// depend on the machine's load. `known` is a schedule to improve on. Nothing when the problem is
/// not made of chains (see chains.hpp) or `known` leaves something out.
///
/// Partial schedules grow in order of start. Given the order, the earliest starts are best for
/// every aim that never gets better by waiting (drying never ends sooner for starting later), so
/// orders are searched and never times. Of two partial schedules that have done the same work, the
/// one that is nowhere later and costs no more can do all the other can: the other is dropped.
std::optional<Searched> best_schedule(const SchedulingProblem& problem, const Solution& known,
                                      std::int64_t most_labels);

}  // namespace tackfree::solver
