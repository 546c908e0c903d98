#include "tackfree/plan/dated_work.hpp"

#include "tackfree/operations/coats_below.hpp"
#include "tackfree/operations/repairs.hpp"
#include "tackfree/plan/early_coats.hpp"
#include "tackfree/plan/log_facts.hpp"
#include "tackfree/plan/moves.hpp"
#include "tackfree/plan/sanding_choice.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/missed_windows.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace tackfree {

namespace {

/// Lists the work once more with sanding before what misses its window; false where nothing does
/// that is not sanded for already. Whoever calls this until it is false comes to an end: each time
/// there are fewer coats left that are not sanded for.
bool sands_for_missed(Plan& plan) {
  const std::size_t before = plan.keyed.size();
  plan.keyed.merge(missed_windows(plan.job, plan.list, plan.air, plan.schedule));
  if (plan.keyed.size() == before) return false;
  list_work(plan);
  return true;
}

void hold_to_windows(Plan& plan) {
  for (Operation& op : plan.list.operations) {
    const auto found = plan.in_window.find(place_of(op));
    if (op.coating && found != plan.in_window.end()) op.window_to_spare = found->second;
  }
}

}  // namespace

solver::Effort effort_after(const solver::Effort& first) {
  return {.left = std::max(first.left, least_effort)};
}

void list_work(Plan& plan) {
  plan.list = with_repairs(operation_list(plan.job, plan.takeoff, plan.volumes, plan.keyed),
                           plan.job, plan.keyed);
  mark_done(plan.list, plan.job, plan.now);  // what does not fit is left out already
  wait_for_coats_below(plan.list, plan.job);
  mark_early_coats(plan);
  mark_trials(plan.list, plan.job, plan.air);
  keep_last_starts(plan);
  hold_to_windows(plan);
}

void date_work(Plan& plan, const std::vector<DryingClock>& clocks, Interval span,
               solver::Effort* effort) {
  const Dating how{clocks, span, solver::any_number, effort};
  plan.schedule = make_schedule(plan.job, plan.list, plan.air, clocks, span, effort);
  const Plan relaxed = plan;
  bool missed = false;
  while (sands_for_missed(plan)) {
    missed = true;
    plan.schedule = make_schedule(plan.job, plan.list, plan.air, clocks, span, effort);
  }
  if (missed && relaxed.schedule.unplaced.empty()) {
    std::optional<Plan> sanded;
    if (plan.schedule.unplaced.empty()) sanded = plan;
    if (auto best = best_by_sanding(relaxed, std::move(sanded), how)) plan = std::move(*best);
  }
  leave_room(plan, how);
}

Fewer date_work_in_sessions(Plan& plan, const std::vector<DryingClock>& clocks, Interval span,
                            std::size_t most_sessions, solver::Effort* effort) {
  const Dating how{clocks, span, most_sessions, effort};
  const auto dated = [&] {
    FewerSessions answer =
        schedule_in_sessions(plan.job, plan.list, plan.air, clocks, span, most_sessions, effort);
    if (!answer.schedule) return answer.none ? Fewer::proved_none : Fewer::not_found;
    plan.schedule = std::move(*answer.schedule);
    return Fewer::found;
  };
  if (const Fewer first = dated(); first != Fewer::found) return first;
  const Plan relaxed = plan;
  std::optional<Plan> sanded;
  bool missed = false;
  Fewer found = Fewer::found;
  while (found == Fewer::found && sands_for_missed(plan)) {
    missed = true;
    found = dated();
  }
  if (found == Fewer::found) sanded = plan;
  auto best = missed ? best_by_sanding(relaxed, std::move(sanded), how) : std::move(sanded);
  if (!best) return Fewer::not_found;
  plan = std::move(*best);
  leave_room(plan, how);
  return Fewer::found;
}

}  // namespace tackfree
