// Window search: partial schedules of chains grown window by window towards a target.
#pragma once

#include "tackfree/solver/partial_bounds.hpp"
#include "tackfree/solver/partial_growth.hpp"

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace tackfree::solver {

/// What a search looks for, and how hard.
struct SearchAim {
  Slot target = 0;  ///< ready by then
  /// Also cheaper than this, and the cheapest; nothing: sessions and late work do not count.
  std::optional<Cost> cheaper_than;
  /// Of the cost only the sessions, which leaves far fewer partial schedules to compare.
  bool sessions_only = false;
  std::size_t beam = 0;  ///< partial schedules kept after each window; 0: all of them
  /// Limits are judged as if what they count from had started at the last moment in its window, so
  /// that only its window must be chosen. What is refuted then is refuted; what is found may break
  /// a limit by less than a window.
  bool loose_limits = false;

  friend bool operator==(const SearchAim&, const SearchAim&) = default;
};

inline constexpr std::int64_t no_limit = std::numeric_limits<std::int64_t>::max();

struct WindowSearchResult {
  /// Activities with their starts, in order; empty when there are none.
  std::vector<std::pair<std::size_t, Slot>> starts;
  bool complete = false;  ///< nothing was left out: if nothing is found, there is nothing
  bool ended = false;     ///< and going on would change nothing
  std::int64_t partials = 0;
  std::int64_t work = 0;  ///< see Effort
};

/// A search that can be left and gone on with.
class OngoingSearch {
 public:
  OngoingSearch() = default;
  OngoingSearch(const OngoingSearch&) = delete;
  OngoingSearch& operator=(const OngoingSearch&) = delete;
  virtual ~OngoingSearch() = default;
  /// What is found and proved by now, and the partial schedules made this time, `partials` or a few
  /// more. A search that has done `work` this time is over for good.
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): two limits by its nature
  virtual WindowSearchResult go_on(std::int64_t partials, std::int64_t work = no_limit) = 0;
};

/// Searches of one problem that share what does not depend on their aims.
class WindowSearcher {
 public:
  /// Refers to both.
  WindowSearcher(const SchedulingProblem& problem, const std::vector<Chain>& chains);
  /// Refers to the searcher's problem and chains, not to the searcher.
  std::unique_ptr<OngoingSearch> begin(const SearchAim& aim) const;

 private:
  std::shared_ptr<const BoundTables> tables_;
  PartialGrowth growth_;
};

}  // namespace tackfree::solver
