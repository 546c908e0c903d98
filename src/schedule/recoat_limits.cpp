#include "tackfree/schedule/recoat_limits.hpp"

#include "tackfree/air/recoat_window.hpp"
#include "tackfree/operations/unsanded_coats.hpp"

#include <algorithm>
#include <utility>

namespace tackfree {

namespace {

using solver::index;
using solver::never;
using solver::OpenTime;
using solver::Slot;

class Limiter {
 public:
  Limiter(const Job& job, const OperationList& list, const AirSeries& air, PosedProblem& posed)
      : job_(job), list_(list), air_(air), posed_(posed) {}

  void add() {
    UnsandedCoats<std::size_t> unsanded;
    for (std::size_t i = 0; i < list_.operations.size(); ++i) {
      const Operation& op = list_.operations[i];
      const auto below = unsanded.pass(op, i);
      if (below && op.window_to_spare && !op.done) limit(*below, i);
    }
  }

 private:
  const Coating& coating_of(const Operation& coat) const { return job_.coatings[*coat.coating]; }

  /// The last slot at which the activity of `over` may begin when the coat below it is on at `on`.
  Slot last_begin(const Operation& below, std::size_t over, Instant on) const {
    const Instant until = recoat_unsanded_until(coating_of(below), air_, on).value();
    const Minutes spare = whole_minutes_up(*list_.operations[over].window_to_spare);
    return std::max(Slot{0}, posed_.grid.slot_down(until - spare) - posed_.place[over].begin);
  }

  void limit(std::size_t below, std::size_t over) {
    const Operation& under = list_.operations[below];
    if (!coating_of(under).recoat_unsanded_within) return;
    const std::size_t to = posed_.activity_of[over];
    if (under.done) return close_after(to, last_begin(under, over, under.done->time.end));
    solver::SchedulingProblem& problem = posed_.problem;
    const std::size_t from = posed_.activity_of[below];
    const solver::Activity& a = problem.activities[from];
    const OpenTime& time = problem.open_times[a.open_time];
    solver::LagTable last(index(problem.horizon) + 1, never);
    Slot filled = never;
    for (Slot e = problem.horizon; e >= a.duration; --e) {
      if (time.is_open(e - a.duration))
        filled = std::min(filled, last_begin(under, over, posed_.grid.at(e)));
      last[index(e)] = filled;
    }
    std::fill(last.begin(), last.begin() + a.duration, filled);
    problem.tables.push_back(std::move(last));
    problem.maximum_lags.push_back({.from = from, .to = to, .table = problem.tables.size() - 1});
  }

  void close_after(std::size_t activity, Slot last) {
    solver::SchedulingProblem& problem = posed_.problem;
    const OpenTime& time = problem.open_times[problem.activities[activity].open_time];
    std::vector<solver::Rule> closed(index(problem.horizon));
    for (Slot s = 0; s < problem.horizon; ++s)
      closed[index(s)] = s > last && time.is_open(s) ? rules::window_below : time.rule(s);
    problem.activities[activity].open_time = problem.open_times.size();
    problem.open_times.emplace_back(std::move(closed));
  }

  const Job& job_;
  const OperationList& list_;
  const AirSeries& air_;
  PosedProblem& posed_;
};

}  // namespace

void add_recoat_limits(const Job& job, const OperationList& list, const AirSeries& air,
                       PosedProblem& posed) {
  Limiter(job, list, air, posed).add();
}

}  // namespace tackfree
