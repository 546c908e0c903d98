#include "tackfree/plan/choices.hpp"

#include "tackfree/plan/aired_work.hpp"
#include "tackfree/plan/due_dates.hpp"
#include "tackfree/plan/listed_work.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"
#include "tackfree/plan/remedies.hpp"

#include <algorithm>
#include <utility>

namespace tackfree {

namespace {

/// Airing may leave the room warmer in few sessions: what is then no sooner is no choice any more.
void add_way(Choices& choices, DatedWork dated) {
  while (dated.aired && dated.schedule.ready_at && !choices.ways.empty() &&
         choices.ways.back().schedule.ready_at >= dated.schedule.ready_at)
    choices.ways.pop_back();
  AttendedWork attended = attended_work(dated.list, dated.schedule, dated.job.calendar.zone);
  choices.ways.push_back({std::move(dated), std::move(attended)});
}

/// The work in the air that the last way leaves, for which a proof of no fewer then holds.
WorkAtHand in_air_of(const DatedWork& way, WorkAtHand work) {
  if (!way.aired) return work;
  work.air = way.air;
  work.aired = way.aired;
  work.list = listed_work(work);
  return work;
}

}  // namespace

Choices choices(WorkAtHand work, solver::Effort& effort, const StageListener& stage) {
  Choices choices;
  const Interval span = work.span();
  DatedWork soonest = date_aired_work(work, span, &effort);
  // What cannot be kept in any case is not asked of the others.
  const std::vector<DueDate> dates = due_dates(soonest);
  const bool late = !std::ranges::all_of(dates, &DueDate::in_time);
  work.job = without_missed_dates(soonest);
  add_way(choices, std::move(soonest));
  // Ends because each way has fewer sessions than the one before.
  while (choices.ways.back().schedule.ready_at && !choices.none_fewer) {
    const std::size_t sessions = choices.ways.back().schedule.sessions.size();
    if (sessions == 0) break;
    if (stage) stage({PlanningStage::fewer_sessions, sessions});
    InSessions fewer = date_aired_work_in_sessions(in_air_of(choices.ways.back(), work), span,
                                                   sessions - 1, &effort);
    choices.none_fewer = fewer.proved_none && !late;
    if (!fewer.work) break;
    fewer.work->job = choices.ways.back().job;
    if (late) fewer.work->schedule.proof.reset();
    add_way(choices, std::move(*fewer.work));
  }
  return choices;
}

std::optional<Choices> choices_of(const Job& job, Instant now, Problems& problems,
                                  const StageListener& stage) {
  solver::Effort effort{most_effort};
  auto work = make_work_at_hand(job, now, problems, &effort);
  if (!work) return std::nullopt;
  Choices found = choices(std::move(*work), effort, stage);
  solver::Effort rest = effort_after(effort);
  found.remedies = remedies(found.ways.front(), job, now, rest);
  return found;
}

}  // namespace tackfree
