#include "tackfree/solver/serial.hpp"

#include "tackfree/solver/chains.hpp"
#include "tackfree/solver/placement.hpp"

#include <algorithm>
#include <functional>
#include <numeric>
#include <optional>
#include <utility>

namespace tackfree::solver {

namespace {

constexpr std::size_t most_permuted_groups = 4;
constexpr std::size_t repairs_per_activity = 4;

void keep_better(const SchedulingProblem& problem, Solution candidate,
                 std::optional<Solution>& best) {
  if (!best || worth(problem, candidate) < worth(problem, *best)) best = std::move(candidate);
}

/// What to place next, with its pieces; every choice is of what is eligible.
using Choice = std::pair<std::size_t, SolvedActivity>;
using Choose = std::function<Choice(const Placement&, const std::vector<Slot>& not_before)>;

/// The least start after `start` from which `to_start` is within the maximum lag.
// NOLINTBEGIN(bugprone-easily-swappable-parameters): two slots by their nature
Slot start_to_reach(const SchedulingProblem& problem, const MaximumLag& lag, Slot start,
                    Slot to_start) {
  // NOLINTEND(bugprone-easily-swappable-parameters)
  const Activity& from = problem.activities[lag.from];
  const OpenTime& time = problem.open_times[from.open_time];
  for (Slot s = time.next_open(start + 1); s != never; s = time.next_open(s + 1)) {
    const std::vector<Run> pieces = pieces_from(problem, from, s);
    if (!pieces.empty() && after(problem, lag, pieces.back().end) >= to_start) return s;
  }
  return never;
}

/// Places all, one by one. Where something comes too late after what is placed, that is put off
/// and all is placed again: starts only ever move on, so this ends.
Solution placed_by(const SchedulingProblem& problem, const Choose& choose,
                   std::int64_t* placed = nullptr) {
  std::vector<Slot> not_before(problem.activities.size(), 0);
  for (std::size_t repairs = 0;; ++repairs) {
    Placement placement(problem);
    bool again = false;
    for (std::size_t n = 0; n < problem.activities.size() && !again; ++n) {
      auto [next, found] = choose(placement, not_before);
      if (!found.placed() && !found.holds.empty() &&
          found.holds.back().by == Hold::By::maximum_lag &&
          repairs < repairs_per_activity * problem.activities.size()) {
        const MaximumLag& lag = problem.maximum_lags[found.holds.back().lag];
        const Slot later =
            start_to_reach(problem, lag, placement.solution().activities[lag.from].begin(),
                           found.holds.back().until);
        again = later != never;
        if (again) not_before[lag.from] = later;
      }
      placement.place(next, std::move(found));
      if (placed != nullptr) ++*placed;
    }
    if (!again) return placement.solution();
  }
}

}  // namespace

Solution placed_by_priority(const SchedulingProblem& problem,
                            const std::vector<std::int64_t>& priority, std::int64_t* placed) {
  const auto first = [&](const Placement& placement, const std::vector<Slot>& not_before) {
    std::optional<std::size_t> next;
    for (std::size_t i = 0; i < problem.activities.size(); ++i)
      if (placement.is_eligible(i) && (!next || priority[i] < priority[*next])) next = i;
    return Choice{*next, placement.earliest(*next, not_before[*next])};
  };
  return placed_by(problem, first, placed);
}

Solution placed_by_earliest_start(const SchedulingProblem& problem) {
  return placed_by(problem, [&](const Placement& placement, const std::vector<Slot>& not_before) {
    std::optional<Choice> best;
    for (std::size_t i = 0; i < problem.activities.size(); ++i) {
      if (!placement.is_eligible(i)) continue;
      SolvedActivity found = placement.earliest(i, not_before[i]);
      const bool sooner = best && found.placed() &&
                          (!best->second.placed() || found.begin() < best->second.begin());
      if (!best || sooner) best = Choice{i, std::move(found)};
    }
    return *best;
  });
}

Solution serial_schedule(const SchedulingProblem& problem) {
  std::optional<Solution> best;
  keep_better(problem, placed_by_earliest_start(problem), best);
  const std::vector<std::size_t> group = groups_of(problem);
  const std::size_t count = group.empty() ? 0 : *std::max_element(group.begin(), group.end()) + 1;
  std::vector<std::int64_t> rank(count);
  std::iota(rank.begin(), rank.end(), std::int64_t{0});
  const auto total = static_cast<std::int64_t>(problem.activities.size());
  do {
    std::vector<std::int64_t> priority(problem.activities.size());
    for (std::size_t i = 0; i < priority.size(); ++i)
      priority[i] = rank[group[i]] * total + static_cast<std::int64_t>(i);
    keep_better(problem, placed_by_priority(problem, priority), best);
  } while (count <= most_permuted_groups && std::next_permutation(rank.begin(), rank.end()));
  return *best;
}

}  // namespace tackfree::solver
