#include "tackfree/schedule/closed_days.hpp"

#include <algorithm>
#include <functional>
#include <map>

namespace tackfree {

namespace {

using solver::Rule;
using solver::Slot;

/// When all that is placed and that the activity waits for is over; `never` where that is later
/// than the plan.
Slot waits_over(const solver::SchedulingProblem& problem, const solver::Solution& solution,
                std::size_t activity) {
  Slot over = 0;
  for (const solver::Lag& lag : problem.lags) {
    if (lag.to != activity || !solution.activities[lag.from].placed()) continue;
    const Slot end = solution.activities[lag.from].end();
    const Slot from = lag.table ? problem.tables[*lag.table][solver::index(end)] : end;
    if (from == solver::never) return solver::never;
    over = std::max(over, from + lag.delay);
  }
  return over;
}

/// The rule of a day by how many of its slots each rule closes.
Rule rule_of(const std::map<Rule, std::size_t>& slots) {
  if (slots.contains(solver::no_rule)) return solver::no_rule;
  Rule most = rules::too_short;
  std::size_t closes = 0;
  for (const auto& [rule, count] : slots)
    if (rule != rules::calendar && count > closes) {
      most = rule;
      closes = count;
    }
  return most;
}

}  // namespace

void count_closed_days(const PosedProblem& posed, const solver::Solution& solution,
                       const Zone& zone, Unplaced& unplaced) {
  const solver::SchedulingProblem& problem = posed.problem;
  const std::size_t activity = posed.activity_of[unplaced.operation];
  const solver::OpenTime& time = problem.open_times[problem.activities[activity].open_time];
  const Slot from = waits_over(problem, solution, activity);
  std::map<Date, std::map<Rule, std::size_t>> by_day;
  for (const solver::Run window : problem.windows)
    for (Slot s = std::max(window.begin, from); s < window.end; ++s)
      if (time.rule(s) < rules::first_release)
        ++by_day[zone.local(posed.grid.at(s)).on][time.rule(s)];
  unplaced.work_days = by_day.size();
  std::map<Rule, std::size_t> closed;
  for (const auto& [on, slots] : by_day)
    if (const Rule rule = rule_of(slots); rule != solver::no_rule) ++closed[rule];
  for (const auto& [rule, count] : closed)
    unplaced.closed.push_back({held_by(rule), gate_of(rule), count});
  std::ranges::stable_sort(unplaced.closed, std::ranges::greater{}, &ClosedDays::days);
}

}  // namespace tackfree
