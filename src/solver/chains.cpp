#include "tackfree/solver/chains.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tackfree::solver {

namespace {

/// Starts from which the activity gets done, with room for the session's set-up and clean-up.
void find_starts(const SchedulingProblem& problem, Link& link) {
  const Activity& activity = problem.activities[link.activity];
  const OpenTime& time = problem.open_times[activity.open_time];
  link.next_start.assign(index(problem.horizon) + 1, never);
  link.end.assign(index(problem.horizon) + 1, never);
  for (Slot s = problem.horizon - 1; s >= 0; --s) {
    link.next_start[index(s)] = link.next_start[index(s) + 1];
    if (!time.is_open(s)) continue;
    if (activity.product) {
      const auto window = window_at(problem, s);
      const Product& product = problem.products[*activity.product];
      if (!window || s - product.set_up < problem.windows[*window].begin ||
          s + activity.duration + product.clean_up > problem.windows[*window].end)
        continue;
    }
    const std::vector<Run> pieces = pieces_from(problem, activity, s);
    if (pieces.empty()) continue;
    link.next_start[index(s)] = s;
    link.end[index(s)] = pieces.back().end;
  }
  link.last_start.assign(index(problem.horizon) + 1, -1);
  for (Slot s = 0, last = -1; s <= problem.horizon; ++s) {
    if (link.next_start[index(s)] == s) last = s;
    link.last_start[index(s)] = last;
  }
}

void find_tails(const SchedulingProblem& problem, Chain& chain) {
  for (std::size_t k = chain.size(); k-- > 0;) {
    Link& link = chain[k];
    link.tail.assign(index(problem.horizon) + 1, never);
    for (Slot s = 0; s <= problem.horizon; ++s) {
      const Slot start = link.next_start[index(s)];
      if (start != s) continue;
      const Slot end = link.end[index(start)];
      Slot met = 0;
      for (const std::size_t goal : link.goals)
        met = std::max(met, problem.tables[goal][index(end)]);
      if (k + 1 < chain.size()) {
        for (const Link::Wait& wait : link.waits) {
          if (k + wait.ahead >= chain.size()) continue;
          const Slot ready = std::max(Slot{0}, ready_after(problem, wait, end));
          met = std::max(
              met, ready > problem.horizon ? never : chain[k + wait.ahead].tail[index(ready)]);
        }
      }
      link.tail[index(s)] = met;
    }
    for (Slot s = problem.horizon - 1; s >= 0; --s)
      link.tail[index(s)] = std::min(link.tail[index(s)], link.tail[index(s) + 1]);
  }
}

/// Dust, rooms and space are kept by chain, not by activity.
bool one_room_and_family(const SchedulingProblem& problem, const Chain& chain) {
  const Activity& first = problem.activities[chain.front().activity];
  return std::all_of(chain.begin(), chain.end(), [&](const Link& link) {
    const Activity& each = problem.activities[link.activity];
    return each.room == first.room && each.family == first.family && each.uses.size() <= 1 &&
           each.workers == 1;
  });
}

bool waits_for_neighbours(const Chain& chain) {
  for (std::size_t k = 0; k + 1 < chain.size(); ++k)
    if (std::none_of(chain[k].waits.begin(), chain[k].waits.end(),
                     [](const Link::Wait& wait) { return wait.ahead == 1; }))
      return false;
  return true;
}

/// Puts each lag into its chain; false when one goes back or too far.
template <class Either>
bool join(const std::vector<Either>& lags, const std::vector<std::size_t>& group,
          const std::vector<std::size_t>& place, std::vector<Link::Wait> Link::*list,
          std::vector<Chain>& chains) {
  for (const Either& lag : lags) {
    if (place[lag.to] <= place[lag.from] || place[lag.to] - place[lag.from] > longest_reach)
      return false;
    (chains[group[lag.from]][place[lag.from]].*list)
        .push_back({place[lag.to] - place[lag.from], lag.table, lag.delay});
  }
  return true;
}

}  // namespace

std::vector<std::size_t> groups_of(const SchedulingProblem& problem) {
  std::vector<std::size_t> group(problem.activities.size());
  std::iota(group.begin(), group.end(), std::size_t{0});
  bool changed = true;
  while (changed) {
    changed = false;
    auto merge = [&](const auto& lag) {
      const std::size_t least = std::min(group[lag.from], group[lag.to]);
      changed = changed || group[lag.from] != least || group[lag.to] != least;
      group[lag.from] = group[lag.to] = least;
    };
    std::for_each(problem.lags.begin(), problem.lags.end(), merge);
    std::for_each(problem.maximum_lags.begin(), problem.maximum_lags.end(), merge);
  }
  std::vector<std::size_t> names = group;
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  for (std::size_t& g : group)
    g = static_cast<std::size_t>(std::lower_bound(names.begin(), names.end(), g) - names.begin());
  return group;
}

Slot ready_after(const SchedulingProblem& problem, const Link::Wait& wait, Slot end) {
  return after(problem, Lag{.table = wait.table, .delay = wait.delay}, end);
}

std::optional<std::vector<Chain>> chains_of(const SchedulingProblem& problem) {
  if (problem.workers != 1 || problem.resources.size() > 1) return std::nullopt;
  const std::vector<std::size_t> group = groups_of(problem);
  std::vector<Chain> chains;
  std::vector<std::size_t> place(problem.activities.size());
  for (std::size_t i = 0; i < problem.activities.size(); ++i) {
    if (group[i] >= most_chains) return std::nullopt;
    if (group[i] >= chains.size()) chains.resize(group[i] + 1);
    place[i] = chains[group[i]].size();
    chains[group[i]].push_back({.activity = i});
  }
  if (!join(problem.lags, group, place, &Link::waits, chains) ||
      !join(problem.maximum_lags, group, place, &Link::limits, chains))
    return std::nullopt;
  for (const Goal& goal : problem.goals)
    chains[group[goal.activity]][place[goal.activity]].goals.push_back(goal.table);
  for (Chain& chain : chains) {
    if (!waits_for_neighbours(chain) || !one_room_and_family(problem, chain)) return std::nullopt;
    for (Link& link : chain) find_starts(problem, link);
    find_tails(problem, chain);
  }
  return chains;
}

}  // namespace tackfree::solver
