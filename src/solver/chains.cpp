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
void find_starts(const SchedulingProblem& problem, Link& link) {
  const Activity& activity = problem.activities[link.activity];
  const OpenTime& time = problem.open_times[activity.open_time];
  const std::size_t size = index(problem.horizon) + 1;
  link.next_start.resize(size);
  link.last_start.resize(size);
  link.end.assign(size, never);
  Slot last = -1;
  for (Slot s = time.next_open(0); s != never; s = time.next_open(s + 1)) {
    if (!has_room_for_session(problem, activity, s)) continue;
    const Slot end = end_from(problem, activity, s);
    if (end == never) continue;
    link.end[index(s)] = end;
    fill(link.next_start, last, s, s);
    fill(link.last_start, last, s - 1, last);
    link.last_start[index(s)] = last = s;
  }
  fill(link.next_start, last, problem.horizon, never);
  fill(link.last_start, last, problem.horizon, last);
}

/// When the goals from a link on are met, if it ends at `end` and the tails of what waits for it
/// are known.
Slot met_after(const SchedulingProblem& problem, const std::vector<Chain>& chains, const Chain& own,
               std::size_t k, Slot end) {
  Slot met = 0;
  auto then = [&](const Link& next, Slot ready) {
    met =
        std::max(met, ready > problem.horizon ? never : next.tail[index(std::max(Slot{0}, ready))]);
  };
  for (const std::size_t goal : own[k].goals) met = std::max(met, problem.tables[goal][index(end)]);
  for (const Link::Wait& wait : own[k].waits)
    then(own[k + wait.ahead], ready_after(problem, wait, end));
  for (const Link::Crossing& crossing : own[k].lets_begin)
    then(chains[crossing.chain][crossing.link], ready_after(problem, crossing, end));
  return met;
}

void find_tail(const SchedulingProblem& problem, std::vector<Chain>& chains, std::size_t g,
               std::size_t k) {
  Link& link = chains[g][k];
  link.tail.resize(index(problem.horizon) + 1);
  Slot filled = problem.horizon;
  Slot least = never;
  for (Slot s = link.last_start.back(); s >= 0; s = s > 0 ? link.last_start[index(s - 1)] : -1) {
    fill(link.tail, s, filled, least);
    filled = s;
    least = std::min(least, met_after(problem, chains, chains[g], k, link.end[index(s)]));
  }
  fill(link.tail, -1, filled, least);
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

struct Place {
  std::size_t chain = 0, link = 0;
};

/// An activity goes on the chain of the last one it waits for, if that is its end.
std::vector<Place> places(const SchedulingProblem& problem) {
  std::vector<Place> place;
  std::vector<std::size_t> ends;  // by chain: its last activity
  for (std::size_t i = 0; i < problem.activities.size(); ++i) {
    std::optional<std::size_t> before;
    for (const Lag& lag : problem.lags)
      if (lag.to == i && ends[place[lag.from].chain] == lag.from && (!before || lag.from > *before))
        before = lag.from;
    if (before) {
      place.push_back({place[*before].chain, place[*before].link + 1});
      ends[place.back().chain] = i;
    } else {
      place.push_back({ends.size(), 0});
      ends.push_back(i);
    }
  }
  return place;
}

/// Puts a lag into its chain; false when it goes back, too far, or to another chain.
template <class Either>
bool join(const Either& lag, Place from, Place to, std::vector<Link::Wait> Link::*list,
          std::vector<Chain>& chains) {
  if (from.chain != to.chain || to.link <= from.link || to.link - from.link > longest_reach)
    return false;
  (chains[from.chain][from.link].*list).push_back({to.link - from.link, lag.table, lag.delay});
  return true;
}

bool join_all(const SchedulingProblem& problem, const std::vector<Place>& place,
              std::vector<Chain>& chains) {
  std::size_t crossings = 0;
  for (const Lag& lag : problem.lags) {
    const Place from = place[lag.from], to = place[lag.to];
    if (from.chain == to.chain) {
      if (!join(lag, from, to, &Link::waits, chains)) return false;
      continue;
    }
    if (crossings == most_crossings) return false;
    chains[from.chain][from.link].lets_begin.push_back(
        {crossings, to.chain, to.link, lag.table, lag.delay});
    chains[to.chain][to.link].begins_after.push_back(
        {crossings, from.chain, from.link, lag.table, lag.delay});
    ++crossings;
  }
  return std::all_of(problem.maximum_lags.begin(), problem.maximum_lags.end(),
                     [&](const MaximumLag& lag) {
                       return join(lag, place[lag.from], place[lag.to], &Link::limits, chains);
                     });
}

}  // namespace

std::vector<std::size_t> groups_of(const SchedulingProblem& problem) {
  std::vector<std::size_t> group(problem.activities.size());
  std::iota(group.begin(), group.end(), std::size_t{0});
  // Ends because the sum of the numbers falls with each change.
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

Slot ready_after(const SchedulingProblem& problem, const Link::Crossing& crossing, Slot end) {
  return after(problem, Lag{.table = crossing.table, .delay = crossing.delay}, end);
}

namespace {

void find_prepared(const SchedulingProblem& problem, Chain& chain) {
  std::uint32_t from = 0;
  for (auto link = chain.end(); link != chain.begin();) {
    --link;
    const auto product = problem.activities[link->activity].product;
    if (product && problem.products[*product].set_up + problem.products[*product].clean_up > 0)
      link->prepared = std::uint32_t{1} << *product;
    link->prepared_from = from = from | link->prepared;
  }
}

}  // namespace

std::optional<std::vector<Chain>> chains_of(const SchedulingProblem& problem) {
  if (problem.workers != 1 || !problem.away.empty() || problem.resources.size() > 1)
    return std::nullopt;
  if (problem.activities.size() * index(problem.horizon) > most_link_slots) return std::nullopt;
  const std::vector<Place> place = places(problem);
  std::vector<Chain> chains;
  for (std::size_t i = 0; i < place.size(); ++i) {
    if (place[i].chain >= most_chains) return std::nullopt;
    if (place[i].chain >= chains.size()) chains.resize(place[i].chain + 1);
    chains[place[i].chain].push_back({.activity = i});
  }
  if (!join_all(problem, place, chains)) return std::nullopt;
  for (const Goal& goal : problem.goals) {
    const Place at = place[goal.activity];
    chains[at.chain][at.link].goals.push_back(goal.table);
  }
  for (Chain& chain : chains) {
    if (chain.size() > most_links || !one_room_and_family(problem, chain)) return std::nullopt;
    for (Link& link : chain) find_starts(problem, link);
    find_prepared(problem, chain);
  }
  // Each activity is listed after those it lags behind.
  for (std::size_t i = place.size(); i-- > 0;)
    find_tail(problem, chains, place[i].chain, place[i].link);
  return chains;
}

}  // namespace tackfree::solver
