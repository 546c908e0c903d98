#include "tackfree/solver/serial.hpp"

#include "tackfree/solver/chains.hpp"
#include "tackfree/solver/placement.hpp"

#include <algorithm>
#include <numeric>
#include <optional>
#include <utility>

namespace tackfree::solver {

namespace {

constexpr std::size_t most_permuted_groups = 4;

void keep_better(const SchedulingProblem& problem, Solution candidate,
                 std::optional<Solution>& best) {
  if (!best || worth(problem, candidate) < worth(problem, *best)) best = std::move(candidate);
}

}  // namespace

Solution placed_by_priority(const SchedulingProblem& problem,
                            const std::vector<std::int64_t>& priority) {
  Placement placement(problem);
  for (std::size_t placed = 0; placed < problem.activities.size(); ++placed) {
    std::optional<std::size_t> next;
    for (std::size_t i = 0; i < problem.activities.size(); ++i)
      if (placement.is_eligible(i) && (!next || priority[i] < priority[*next])) next = i;
    placement.place(*next, placement.earliest(*next));
  }
  return placement.solution();
}

Solution placed_by_earliest_start(const SchedulingProblem& problem) {
  Placement placement(problem);
  for (std::size_t placed = 0; placed < problem.activities.size(); ++placed) {
    std::optional<std::size_t> next;
    SolvedActivity best;
    for (std::size_t i = 0; i < problem.activities.size(); ++i) {
      if (!placement.is_eligible(i)) continue;
      SolvedActivity found = placement.earliest(i);
      const bool sooner = found.placed() && (!best.placed() || found.begin() < best.begin());
      if (!next || sooner) {
        next = i;
        best = std::move(found);
      }
    }
    placement.place(*next, std::move(best));
  }
  return placement.solution();
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
