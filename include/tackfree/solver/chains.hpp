// Chains: activities that wait for each other, one line of work after another, ready for search.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace tackfree::solver {

inline constexpr std::size_t most_chains = 8;
/// In a chain: progress is compared in bytes, seven bits each.
inline constexpr std::size_t most_links = 127;
/// How far ahead in its chain an activity may keep another waiting.
inline constexpr std::size_t longest_reach = 4;

/// Links times slots of the horizon: sixteen bytes each.
inline constexpr std::size_t most_link_slots = 5'000'000;

/// Waits of one chain for another, all together.
inline constexpr std::size_t most_crossings = 4;

/// One activity of a chain with its starts and ends worked out for every slot.
struct Link {
  /// What the activity `ahead` places after this one in the chain waits for, 1 for its neighbour;
  /// or, as a limit, what it may not start later than.
  struct Wait {
    std::size_t ahead = 1;
    std::optional<std::size_t> table;
    Slot delay = 0;
  };
  /// A wait of a link of one chain for a link of another, seen from either of them.
  struct Crossing {
    std::size_t number = 0;
    std::size_t chain = 0, link = 0;  ///< the other end
    std::optional<std::size_t> table;
    Slot delay = 0;
  };
  std::size_t activity = 0;
  std::vector<Wait> waits;
  std::vector<Wait> limits;
  std::vector<Crossing> lets_begin;  ///< links of other chains that wait for this one
  std::vector<Crossing> begins_after;
  std::vector<Slot> next_start;    ///< by slot: the first start at or after it, or never
  std::vector<Slot> last_start;    ///< by slot: the last start at or before it, or -1
  std::vector<Slot> end;           ///< by start: when it is done
  std::vector<std::size_t> goals;  ///< tables of its goals
  /// Products, by bit, that take setting up or cleaning up: this link's, and those of all links
  /// from here on.
  std::uint32_t prepared = 0, prepared_from = 0;
  /// By slot: a lower bound on when the goals from here on are met, if it starts no sooner.
  std::vector<Slot> tail;
};

using Chain = std::vector<Link>;

/// The problem as chains: an activity goes on the chain of the last one it lags behind, if that is
/// its end, and so waits at least for its neighbour before. Of other lags, few may lead from chain
/// to chain. Nothing when the lags do not have that form, reach too far, or make more than
/// `most_chains` chains, a longer one than `most_links` or more than `most_link_slots`; when there
/// are several workers or resources; or when a chain changes its room or family. Starts of session
/// work leave room for set-up and clean-up in the window.
std::optional<std::vector<Chain>> chains_of(const SchedulingProblem& problem);

Slot ready_after(const SchedulingProblem& problem, const Link::Crossing& crossing, Slot end);

/// When `wait` is over for an activity before that ended at `end`.
Slot ready_after(const SchedulingProblem& problem, const Link::Wait& wait, Slot end);

/// For each activity, the number of its group: activities joined by lags of either kind, in order
/// of appearance.
std::vector<std::size_t> groups_of(const SchedulingProblem& problem);

}  // namespace tackfree::solver
