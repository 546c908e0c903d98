#include "bench/order_timing.hpp"

#include <algorithm>

namespace tackfree::solver {

OrderTiming::OrderTiming(const SchedulingProblem& problem)
    : problem_(problem), lags_from_(problem.activities.size()) {
  const std::size_t size = index(problem.horizon) + 1;
  for (const Activity& activity : problem.activities) {
    const OpenTime& time = problem.open_times[activity.open_time];
    auto& next = next_.emplace_back(size, never);
    auto& last = last_.emplace_back(size, -1);
    auto& ends = ends_.emplace_back(size, never);
    for (Slot s = problem.horizon - 1; s >= 0; --s) {
      next[index(s)] = next[index(s) + 1];
      if (!time.is_open(s)) continue;
      const std::vector<Run> pieces = pieces_from(problem, activity, s);
      if (pieces.empty() || pieces.back().end > problem.horizon) continue;
      next[index(s)] = s;
      ends[index(s)] = pieces.back().end;
    }
    for (Slot s = 0, at = -1; s <= problem.horizon; ++s) {
      if (next[index(s)] == s) at = s;
      last[index(s)] = at;
    }
  }
  for (std::size_t i = 0; i < problem.lags.size(); ++i)
    lags_from_[problem.lags[i].from].push_back(i);
}

bool OrderTiming::can_time(const SchedulingProblem& problem) {
  return std::all_of(problem.products.begin(), problem.products.end(), [](const Product& product) {
    return product.set_up == 0 && product.clean_up == 0;
  });
}

bool OrderTiming::set(std::size_t i, Slot at, const std::vector<Slot>& latest,
                      std::vector<Slot>& starts, bool& moved) const {
  if (at > problem_.horizon) return false;
  const Slot start = next_[i][index(std::max(at, Slot{0}))];
  if (start == never || start > latest[i]) return false;
  if (start > starts[i]) {
    starts[i] = start;
    moved = true;
  }
  return true;
}

bool OrderTiming::raise_by_lags(const std::vector<Slot>& latest, std::vector<Slot>& starts,
                                bool& moved) const {
  for (std::size_t i = 0; i < problem_.activities.size(); ++i)
    for (const std::size_t number : lags_from_[i]) {
      const Lag& lag = problem_.lags[number];
      if (!set(lag.to, after(problem_, lag, end(i, starts[i])), latest, starts, moved))
        return false;
    }
  for (const MaximumLag& lag : problem_.maximum_lags) {
    Slot from = starts[lag.from];
    while (from != never && after(problem_, lag, end(lag.from, from)) < starts[lag.to])
      from = from + 1 > problem_.horizon ? never : next_[lag.from][index(from + 1)];
    if (from == never || !set(lag.from, from, latest, starts, moved)) return false;
  }
  return true;
}

bool OrderTiming::raise(const std::vector<std::size_t>& order, const std::vector<Slot>& latest,
                        std::vector<Slot>& starts) const {
  bool moved = false;
  for (std::size_t i = 0; i < starts.size(); ++i)
    if (!set(i, starts[i], latest, starts, moved)) return false;
  std::vector<bool> listed(starts.size(), false);
  for (const std::size_t i : order) listed[i] = true;
  // Ends because starts only move later, and none past its latest.
  do {
    moved = false;
    Slot before = 0;
    for (std::size_t p = 0; p < order.size(); ++p) {
      const std::size_t i = order[p];
      Slot at = std::max(starts[i], before);
      while (true) {
        if (!set(i, at, latest, starts, moved)) return false;
        const Slot free = free_after(order, p, starts[i], starts);
        if (free == starts[i]) break;
        at = free;
      }
      before = starts[i];
    }
    for (std::size_t i = 0; i < starts.size(); ++i)
      if (!listed[i] && !set(i, std::max(starts[i], before), latest, starts, moved)) return false;
    if (!raise_by_lags(latest, starts, moved)) return false;
  } while (moved);
  return true;
}

Slot OrderTiming::workers_free(const std::vector<std::size_t>& order, std::size_t position, Slot at,
                               const std::vector<Slot>& starts) const {
  if (problem_.activities[order[position]].workers == 0) return at;
  int busy = 0;
  Slot next = never;
  for (std::size_t p = 0; p < position; ++p) {
    if (problem_.activities[order[p]].workers == 0) continue;
    const Slot until = end(order[p], starts[order[p]]);
    if (until <= at) continue;
    ++busy;
    next = std::min(next, until);
  }
  return busy >= problem_.workers ? next : at;
}

Slot OrderTiming::resources_free(const std::vector<std::size_t>& order, std::size_t position,
                                 Slot at, const std::vector<Slot>& starts) const {
  const std::size_t i = order[position];
  for (const Use& use : problem_.activities[i].uses) {
    if (held(problem_, use, {at, end(i, at)}).end <= at) continue;
    int used = use.amount;
    Slot next = never;
    for (const Standing& other : problem_.standing)
      if (other.resource == use.resource && other.until > at) {
        used += other.amount;
        next = std::min(next, other.until);
      }
    for (std::size_t p = 0; p < position; ++p)
      for (const Use& other : problem_.activities[order[p]].uses) {
        if (other.resource != use.resource) continue;
        const Slot start = starts[order[p]];
        const Slot until = held(problem_, other, {start, end(order[p], start)}).end;
        if (until <= at) continue;
        used += other.amount;
        next = std::min(next, until);
      }
    if (used > problem_.resources[use.resource]) return next;
  }
  return at;
}

/// `at` when those before in the order leave room for the activity then; else a later slot. What
/// started before only ever ends, so the start is all that must be looked at.
Slot OrderTiming::free_after(const std::vector<std::size_t>& order, std::size_t position, Slot at,
                             const std::vector<Slot>& starts) const {
  const Activity& activity = problem_.activities[order[position]];
  Slot free = std::max(workers_free(order, position, at, starts),
                       resources_free(order, position, at, starts));
  if (!activity.dusty && !activity.wet_until) return free;
  for (std::size_t p = 0; p < position; ++p) {
    const std::size_t j = order[p];
    const Activity& other = problem_.activities[j];
    const Slot done = end(j, starts[j]);
    if (disturbs(activity, other))
      free = std::max(free, problem_.tables[*other.wet_until][index(done)]);
    if (disturbs(other, activity)) free = std::max(free, done + problem_.dust_settles);
  }
  return free;
}

void OrderTiming::lower(Slot target, std::vector<Slot>& latest) const {
  auto lower_while = [&](std::size_t i, auto&& too_late) {
    Slot at = latest[i] < 0 ? -1 : last_[i][index(std::min(latest[i], problem_.horizon))];
    while (at >= 0 && too_late(at)) at = at == 0 ? -1 : last_[i][index(at - 1)];
    const bool moved = at < latest[i];
    latest[i] = at;
    return moved;
  };
  for (const Goal& goal : problem_.goals)
    lower_while(goal.activity, [&](Slot s) {
      return problem_.tables[goal.table][index(end(goal.activity, s))] > target;
    });
  for (bool moved = true; moved;) {
    moved = false;
    for (const Lag& lag : problem_.lags)
      moved |= lower_while(lag.from, [&](Slot s) {
        const Slot ready = after(problem_, lag, end(lag.from, s));
        return ready > problem_.horizon || ready > latest[lag.to];
      });
    for (const MaximumLag& lag : problem_.maximum_lags)
      moved |= lower_while(lag.to, [&](Slot s) {
        return latest[lag.from] < 0 || s > after(problem_, lag, end(lag.from, latest[lag.from]));
      });
  }
}

Slot OrderTiming::over(std::size_t i, Slot start) const {
  const Activity& activity = problem_.activities[i];
  const Slot done = end(i, start);
  Slot over = activity.dusty ? done + problem_.dust_settles : done;
  for (const Use& use : activity.uses)
    over = std::max(over, held(problem_, use, {start, done}).end);
  if (activity.wet_until) over = std::max(over, problem_.tables[*activity.wet_until][index(done)]);
  return over;
}

}  // namespace tackfree::solver
