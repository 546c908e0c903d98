#include "tackfree/solver/cut_short.hpp"

#include <algorithm>
#include <vector>

namespace tackfree::solver {

namespace {

/// Which activities have a goal or are followed by one? Those before never start after it.
std::vector<bool> lead_to_goals(const SchedulingProblem& problem) {
  std::vector<bool> leads(problem.activities.size(), false);
  for (const Goal& goal : problem.goals) leads[goal.activity] = true;
  std::vector<std::vector<std::size_t>> before(problem.activities.size());
  for (const Lag& lag : problem.lags) before[lag.to].push_back(lag.from);
  // Each activity is listed after those it lags behind.
  for (std::size_t i = leads.size(); i-- > 0;)
    if (leads[i])
      for (const std::size_t from : before[i]) leads[from] = true;
  return leads;
}

/// Nothing but the worker's time: such work disturbs nothing that has been done before it.
bool is_plain(const SchedulingProblem& problem, std::size_t i) {
  const Activity& a = problem.activities[i];
  return !a.splittable && !a.dusty && !a.wet_until && !a.product && a.uses.empty() &&
         std::none_of(problem.maximum_lags.begin(), problem.maximum_lags.end(),
                      [&](const MaximumLag& lag) { return lag.from == i || lag.to == i; });
}

/// When plain work that no goal waits for can be done, one after another, when all else is done by
/// `free`; never when that is not so.
Slot end_of_trailing(const SchedulingProblem& problem, const std::vector<bool>& leads, Slot free) {
  std::vector<Slot> done(problem.activities.size(), free);
  for (std::size_t i = 0; i < leads.size(); ++i) {
    if (leads[i]) continue;
    if (!is_plain(problem, i)) return never;
    Slot from = free;
    for (const Lag& lag : problem.lags)
      if (lag.to == i) from = std::max(from, after(problem, lag, done[lag.from]));
    const Activity& activity = problem.activities[i];
    const Slot start = problem.open_times[activity.open_time].next_open(from);
    const Slot end = start == never ? never : end_from(problem, activity, start);
    if (end == never) return never;
    free = done[i] = end;
  }
  return free;
}

/// The last end with which a goal is met in time, or -1.
Slot last_end(const LagTable& table, Slot target) {
  return static_cast<Slot>(std::upper_bound(table.begin(), table.end(), target) - table.begin()) -
         1;
}

}  // namespace

Slot horizon_for(const SchedulingProblem& problem, Slot target) {
  const std::vector<bool> leads = lead_to_goals(problem);
  Slot last_start = 0;
  for (const Goal& goal : problem.goals)
    last_start = std::max(last_start, last_end(problem.tables[goal.table], target));
  Slot horizon = last_start + 1;
  for (std::size_t i = 0; i < leads.size(); ++i) {
    if (!leads[i]) continue;
    const Activity& activity = problem.activities[i];
    const OpenTime& time = problem.open_times[activity.open_time];
    const Slot end = [&] {
      // What is split may be cut by many nights, so its end is looked up.
      if (!activity.splittable) return last_start + activity.duration;
      const Slot start = time.next_open(std::min(last_start, problem.horizon));
      return start == never ? problem.horizon : end_from(problem, activity, start);
    }();
    horizon = std::max(horizon, std::min(end, problem.horizon));
  }
  horizon = std::max(horizon, std::min(end_of_trailing(problem, leads, horizon), problem.horizon));
  // Clean-up goes on to the end of the window.
  for (const Run window : problem.windows)
    if (window.begin <= horizon) horizon = std::max(horizon, window.end);
  return std::min(horizon, problem.horizon);
}

SchedulingProblem cut_short(const SchedulingProblem& problem, Slot horizon) {
  if (horizon >= problem.horizon) return problem;
  SchedulingProblem cut{.horizon = horizon,
                        .workers = problem.workers,
                        .windows = problem.windows,
                        .away = problem.away,
                        .products = problem.products,
                        .activities = problem.activities,
                        .lags = problem.lags,
                        .maximum_lags = problem.maximum_lags,
                        .resources = problem.resources,
                        .standing = problem.standing,
                        .goals = problem.goals,
                        .late = problem.late,
                        .dust_settles = problem.dust_settles,
                        .shortest_piece = problem.shortest_piece};
  for (auto* runs : {&cut.windows, &cut.away})
    std::erase_if(*runs, [&](Run run) { return run.begin >= horizon; });
  for (const OpenTime& time : problem.open_times) cut.open_times.push_back(time.until(horizon));
  for (const LagTable& table : problem.tables)
    cut.tables.emplace_back(table.begin(), table.begin() + horizon + 1);
  return cut;
}

}  // namespace tackfree::solver
