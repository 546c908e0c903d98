#include "tackfree/plan/choices.hpp"

#include "tackfree/plan/aired_work.hpp"
#include "tackfree/plan/due_dates.hpp"

#include <algorithm>
#include <utility>

namespace tackfree {

namespace {

/// Airing may leave the room warmer in few sessions: what is then no sooner is no choice any more.
void add_way(Choices& choices, Plan way) {
  while (way.aired && way.schedule.ready_at && !choices.ways.empty() &&
         choices.ways.back().schedule.ready_at >= way.schedule.ready_at)
    choices.ways.pop_back();
  way.work = attended_work(way.list, way.schedule, way.job.calendar.zone);
  choices.ways.push_back(std::move(way));
}

/// `standing` with the air that the last way leaves, for which a proof of no fewer then holds.
Plan in_air_of(const Plan& way, Plan standing) {
  if (!way.aired) return standing;
  standing.air = way.air;
  standing.aired = way.aired;
  list_work(standing);
  return standing;
}

}  // namespace

Choices choices(Plan standing, Interval span, solver::Effort& effort, const StageListener& stage) {
  Choices choices;
  Plan soonest = standing;
  date_aired_work(soonest, span, &effort);
  // What cannot be kept in any case is not asked of the others.
  const std::vector<DueDate> dates = due_dates(soonest);
  const bool late = !std::ranges::all_of(dates, &DueDate::in_time);
  standing.job = without_missed_dates(soonest);
  add_way(choices, std::move(soonest));
  // Ends because each way has fewer sessions than the one before.
  while (choices.ways.back().schedule.ready_at && !choices.none_fewer) {
    const std::size_t sessions = choices.ways.back().schedule.sessions.size();
    if (sessions == 0) break;
    if (stage) stage({PlanningStage::fewer_sessions, sessions});
    Plan next = in_air_of(choices.ways.back(), standing);
    const Fewer fewer = date_aired_work_in_sessions(next, span, sessions - 1, &effort);
    choices.none_fewer = fewer == Fewer::proved_none && !late;
    if (fewer != Fewer::found) break;
    next.job = choices.ways.back().job;
    if (late) next.schedule.proof.reset();
    add_way(choices, std::move(next));
  }
  return choices;
}

std::optional<Choices> choices_of(Job job, Instant now, Problems& problems,
                                  const StageListener& stage) {
  solver::Effort effort{most_effort};
  auto standing = make_standing(std::move(job), now, problems, &effort);
  if (!standing) return std::nullopt;
  const Interval span{standing->now, standing->now + whole_minutes_up(standing->job.horizon)};
  return choices(std::move(*standing), span, effort, stage);
}

}  // namespace tackfree
