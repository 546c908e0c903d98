#include "tackfree/plan/dated_work.hpp"

#include "tackfree/plan/listed_work.hpp"
#include "tackfree/plan/sanding_choice.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/missed_windows.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <algorithm>
#include <utility>

namespace tackfree {

namespace {

/// Lists the work once more with sanding before what misses its window; false where nothing does
/// that is not sanded for already. Whoever calls this until it is false comes to an end: each time
/// there are fewer coats left that are not sanded for.
bool sands_for_missed(DatedWork& work) {
  const std::size_t before = work.keyed.size();
  work.keyed.merge(missed_windows(work.job, work.list, work.air, work.schedule));
  if (work.keyed.size() == before) return false;
  work.list = listed_work(work);
  return true;
}

}  // namespace

solver::Effort effort_after(const solver::Effort& first) {
  return {.left = std::max(first.left, least_effort)};
}

DatedWork date_work(WorkAtHand at_hand, const std::vector<DryingClock>& clocks, Interval span,
                    solver::Effort* effort) {
  const Dating how{clocks, span, solver::any_number, effort};
  const auto dated = [&](const WorkAtHand& each) {
    return make_schedule(each.job, each.list, each.air, clocks, span, effort);
  };
  Schedule schedule = dated(at_hand);
  DatedWork work{std::move(at_hand), std::move(schedule)};
  const DatedWork relaxed = work;
  bool missed = false;
  while (sands_for_missed(work)) {
    missed = true;
    work.schedule = dated(work);
  }
  if (missed && relaxed.schedule.unplaced.empty()) {
    std::optional<DatedWork> sanded;
    if (work.schedule.unplaced.empty()) sanded = work;
    if (auto best = best_by_sanding(relaxed, std::move(sanded), how)) work = std::move(*best);
  }
  leave_room(work, how);
  return work;
}

InSessions date_work_in_sessions(WorkAtHand at_hand, const std::vector<DryingClock>& clocks,
                                 Interval span, std::size_t most_sessions, solver::Effort* effort) {
  const Dating how{clocks, span, most_sessions, effort};
  const auto dated = [&](const WorkAtHand& each) {
    return schedule_in_sessions(each.job, each.list, each.air, clocks, span, most_sessions, effort);
  };
  FewerSessions first = dated(at_hand);
  if (!first.schedule) return {std::nullopt, first.none};
  std::optional<DatedWork> sanded = DatedWork{std::move(at_hand), std::move(*first.schedule)};
  const DatedWork relaxed = *sanded;
  bool missed = false;
  while (sanded && sands_for_missed(*sanded)) {
    missed = true;
    if (auto again = dated(*sanded).schedule)
      sanded->schedule = std::move(*again);
    else
      sanded.reset();
  }
  auto best = missed ? best_by_sanding(relaxed, std::move(sanded), how) : std::move(sanded);
  if (best) leave_room(*best, how);
  return {std::move(best), false};
}

}  // namespace tackfree
