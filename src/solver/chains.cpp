#include "tackfree/solver/chains.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tackfree::solver {

namespace {

bool has_room_for_session(const SchedulingProblem& problem, const Activity& activity, Slot start) {
  if (!activity.product) return true;
  const auto window = window_at(problem, start);
  const Product& product = problem.products[*activity.product];
  return window && start - product.set_up >= problem.windows[*window].begin &&
         start + activity.duration + product.clean_up <= problem.windows[*window].end;
}

/// Entries after `after` up to `to`, as runs, because few slots are starts.
void fill(std::vector<Slot>& entries, Slot after, Slot to, Slot value) {
  std::fill(entries.begin() + after + 1, entries.begin() + to + 1, value);
}

/// Starts from which the activity gets done, with room for the session's set-up and clean-up.
std::vector<Slot> find_starts(const SchedulingProblem& problem, Link& link) {
  const Activity& activity = problem.activities[link.activity];
  const OpenTime& time = problem.open_times[activity.open_time];
  const std::size_t size = index(problem.horizon) + 1;
  link.next_start.resize(size);
  link.last_start.resize(size);
  link.end.assign(size, never);
  std::vector<Slot> starts;
  Slot last = -1;
  for (Slot s = time.next_open(0); s != never; s = time.next_open(s + 1)) {
    if (!has_room_for_session(problem, activity, s)) continue;
    const Slot end = end_from(problem, activity, s);
    if (end == never) continue;
    link.end[index(s)] = end;
    fill(link.next_start, last, s, s);
    fill(link.last_start, last, s - 1, last);
    link.last_start[index(s)] = last = s;
    starts.push_back(s);
  }
  fill(link.next_start, last, problem.horizon, never);
  fill(link.last_start, last, problem.horizon, last);
  return starts;
}

/// `starts` of all links of the chain.
void find_tails(const SchedulingProblem& problem, const std::vector<std::vector<Slot>>& starts,
                Chain& chain) {
  for (std::size_t k = chain.size(); k-- > 0;) {
    Link& link = chain[k];
    link.tail.resize(index(problem.horizon) + 1);
    Slot filled = problem.horizon;
    Slot least = never;
    for (auto s = starts[k].rbegin(); s != starts[k].rend(); ++s) {
      const Slot end = link.end[index(*s)];
      Slot met = 0;
      for (const std::size_t goal : link.goals)
        met = std::max(met, problem.tables[goal][index(end)]);
      for (const Link::Wait& wait : link.waits) {
        const Slot ready = std::max(Slot{0}, ready_after(problem, wait, end));
        met = std::max(met,
                       ready > problem.horizon ? never : chain[k + wait.ahead].tail[index(ready)]);
      }
      fill(link.tail, *s, filled, least);
      filled = *s;
      least = std::min(least, met);
    }
    fill(link.tail, -1, filled, least);
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
    if (chain.size() > most_links || !waits_for_neighbours(chain) ||
        !one_room_and_family(problem, chain))
      return std::nullopt;
    std::vector<std::vector<Slot>> starts;
    for (Link& link : chain) starts.push_back(find_starts(problem, link));
    find_tails(problem, starts, chain);
  }
  return chains;
}

}  // namespace tackfree::solver
