#include "tackfree/solver/fluid_bound.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace tackfree::solver {

namespace {

class Fluid {
 public:
  explicit Fluid(const SchedulingProblem& problem)
      : problem_(problem), lags_from_(problem.activities.size()) {
    for (std::size_t i = 0; i < problem.lags.size(); ++i)
      lags_from_[problem.lags[i].from].push_back(i);
    find_hours();
  }

  /// When all is ready if nobody waits for a worker; never when that is not within the horizon.
  Slot lines_alone() const {
    std::vector<Slot> from(problem_.activities.size(), 0);
    std::vector<Slot> ends(problem_.activities.size(), 0);
    for (std::size_t i = 0; i < from.size(); ++i) {
      const Activity& activity = problem_.activities[i];
      const OpenTime& time = problem_.open_times[activity.open_time];
      std::vector<Run> pieces;
      for (Slot s = time.next_open(from[i]); s != never && pieces.empty();
           s = time.next_open(s + 1))
        pieces = pieces_from(problem_, activity, s);
      if (pieces.empty()) return never;
      ends[i] = pieces.back().end;
      for (const std::size_t lag : lags_from_[i]) {
        const Slot ready = after(problem_, problem_.lags[lag], ends[i]);
        if (ready == never) return never;
        Slot& later = from[problem_.lags[lag].to];
        later = std::max(later, ready);
      }
    }
    Slot ready = 0;
    for (const Goal& goal : problem_.goals)
      ready = std::max(ready, problem_.tables[goal.table][index(ends[goal.activity])]);
    return ready;
  }

  /// Does the work that must be done by each slot fit before it?
  bool fits(Slot target) const {
    std::vector<Slot> latest(problem_.activities.size(), problem_.horizon);  // ends
    for (const Goal& goal : problem_.goals)
      latest[goal.activity] =
          std::min(latest[goal.activity], last_within(problem_.tables[goal.table], target));
    std::vector<std::pair<Slot, Slot>> work;
    for (std::size_t i = latest.size(); i-- > 0;) {
      const Activity& activity = problem_.activities[i];
      for (const std::size_t number : lags_from_[i]) {
        const Lag& lag = problem_.lags[number];
        const Activity& to = problem_.activities[lag.to];
        const Slot start = latest[lag.to] - to.duration - lag.delay;
        const Slot end = lag.table ? last_within(problem_.tables[*lag.table], start) : start;
        latest[i] = std::min(latest[i], end);
      }
      if (latest[i] < activity.duration) return false;
      if (activity.workers > 0) work.emplace_back(latest[i], activity.duration);
    }
    std::sort(work.begin(), work.end());
    std::int64_t sum = 0;
    for (const auto& [end, duration] : work) {
      sum += duration;
      if (sum > hours_before_[index(end)]) return false;
    }
    return true;
  }

 private:
  /// The last entry of a nondecreasing table that is at most `limit`, or -1.
  static Slot last_within(const LagTable& table, Slot limit) {
    return static_cast<Slot>(std::upper_bound(table.begin(), table.end(), limit) - table.begin()) -
           1;
  }

  void find_hours() {
    std::vector<bool> open(index(problem_.horizon), false);
    std::vector<std::pair<std::size_t, Slot>> seen;
    for (const Activity& activity : problem_.activities) {
      const std::pair kind{activity.open_time, activity.splittable ? Slot{1} : activity.duration};
      if (activity.workers == 0 || std::find(seen.begin(), seen.end(), kind) != seen.end())
        continue;
      seen.push_back(kind);
      const OpenTime& time = problem_.open_times[kind.first];
      Slot covered = 0;
      for (Slot s = time.next_open(0); s != never; s = time.next_open(s + 1))
        for (covered = std::max(covered, s); covered < std::min(s + kind.second, problem_.horizon);
             ++covered)
          open[index(covered)] = true;
    }
    hours_before_.assign(open.size() + 1, 0);
    std::vector<int> there(open.size(), problem_.workers);
    for (const Run away : problem_.away)
      for (Slot s = away.begin; s < away.end; ++s) --there[index(s)];
    for (std::size_t s = 0; s < open.size(); ++s)
      hours_before_[s + 1] = hours_before_[s] + (open[s] ? there[s] : 0);
  }

  const SchedulingProblem& problem_;
  std::vector<std::vector<std::size_t>> lags_from_;
  std::vector<std::int64_t> hours_before_;  ///< by slot: of all workers together
};

}  // namespace

Slot fluid_bound(const SchedulingProblem& problem) {
  const Fluid fluid(problem);
  Slot least = fluid.lines_alone();
  if (least == never) return never;
  Slot most = least;  // the largest goal there is
  for (const Goal& goal : problem.goals)
    for (const Slot at : problem.tables[goal.table])
      if (at != never) most = std::max(most, at);
  if (!fluid.fits(most)) return never;
  while (least < most) {
    const Slot middle = least + (most - least) / 2;
    if (fluid.fits(middle))
      most = middle;
    else
      least = middle + 1;
  }
  return least;
}

}  // namespace tackfree::solver
