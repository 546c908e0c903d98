// Proof search: schedules proved best, from partial schedules compared by how far each chain is.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>

namespace tackfree::solver {

inline constexpr std::size_t any_number = std::numeric_limits<std::size_t>::max();

/// What all searches for one plan may still do, in comparisons of two partial schedules: a limit on
/// work, not on time, so that the answer does not depend on the machine's load.
struct Effort {
  std::int64_t left = std::numeric_limits<std::int64_t>::max();
};

/// A schedule and what is proved of it.
struct Searched {
  Solution solution;             ///< leaves something out when no whole schedule was found
  Slot ready_bound = 0;          ///< no schedule is ready before this slot
  bool ready_proved = false;     ///< this one is ready then
  bool sessions_proved = false;  ///< and no schedule ready then has fewer sessions
  bool infeasible = false;       ///< proved: every schedule leaves something out
  std::int64_t partials = 0;     ///< partial schedules made
};

/// What the limit on partial schedules is spent on.
enum class Prove { ready_and_sessions, ready };

/// The best schedule by `worth` within a limit on partial schedules, so that the answer does not
/// depend on the machine's load. `known` is a schedule to improve on. Nothing when the problem is
/// not made of chains (see chains.hpp). Of schedules equal in readiness, sessions and late work,
/// which one is found is fixed but not always the one with the least sum of starts.
///
/// Partial schedules grow in order of start, one window of work after another. Given the order, the
/// earliest starts are best for every aim that never gets better by waiting (drying never ends
/// sooner for starting later), so orders are searched and never times. Of two partial schedules,
/// the one that has done no less, is nowhere later and costs no more can do all the other can: the
/// other is dropped. A first search that keeps only the most promising finds a good schedule; one
/// that drops nothing else then looks for any that is ready sooner, and if there is none, that is
/// the proof.
///
/// What the search does is taken off `effort`; when nothing is left of that, it ends with what it
/// has.
///
/// With `most_sessions` only schedules in so many sessions count, and all that is proved is proved
/// of those; `known` is used where it is one of them.
std::optional<Searched> best_schedule(const SchedulingProblem& problem, const Solution& known,
                                      std::int64_t most_partials,
                                      std::size_t most_sessions = any_number,
                                      Prove prove = Prove::ready_and_sessions,
                                      Effort* effort = nullptr);

}  // namespace tackfree::solver
