// Chains: activities that wait for each other, one line of work after another, ready for search.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <array>
#include <optional>
#include <vector>

namespace tackfree::solver {

inline constexpr std::size_t most_chains = 8;
/// How far back in its chain an activity may wait for another.
inline constexpr std::size_t longest_reach = 4;

/// One activity of a chain with its starts and ends worked out for every slot.
struct Link {
  /// A wait for the activity `back` places before this one in the chain, 1 for its neighbour.
  struct Wait {
    std::size_t back = 1;
    std::optional<std::size_t> table;
    Slot delay = 0;
  };
  std::size_t activity = 0;
  std::vector<Wait> waits;
  std::vector<Slot> next_start;    ///< by slot: the first start at or after it, or never
  std::vector<Slot> end;           ///< by start: when it is done
  std::vector<std::size_t> goals;  ///< tables of its goals
  /// By slot: a lower bound on when the goals from here on are met, if it starts no sooner.
  std::vector<Slot> tail;
  /// Places back from the next link whose ends later links still wait for.
  std::vector<std::size_t> remembered;
};

using Chain = std::vector<Link>;

/// The problem as chains: activities joined by lags, each waiting at least for its neighbour
/// before. Nothing when the lags do not have that form, reach too far back, or make more than
/// `most_chains` chains. Starts of session work leave room for set-up and clean-up in the window.
std::optional<std::vector<Chain>> chains_of(const SchedulingProblem& problem);

/// When `wait` is over for an activity before that ended at `end`.
Slot ready_after(const SchedulingProblem& problem, const Link::Wait& wait, Slot end);

/// For each activity, the number of its group: activities joined by lags, in order of appearance.
std::vector<std::size_t> groups_of(const SchedulingProblem& problem);

}  // namespace tackfree::solver
