#include "tackfree/plan/choices.hpp"

#include "tackfree/plan/due_dates.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

void add_way(Choices& choices, Plan way) {
  way.work = attended_work(way.list, way.schedule, way.job.calendar.zone);
  choices.ways.push_back(std::move(way));
}

}  // namespace

Choices choices(Plan standing, const std::vector<DryingClock>& clocks, Interval span,
                const StageListener& stage) {
  Choices choices;
  solver::Effort effort{most_effort};
  Plan soonest = standing;
  date_work(soonest, clocks, span, &effort);
  // What cannot be kept in any case is not asked of the others.
  const std::vector<DueDate> dates = due_dates(soonest);
  const bool late = !std::ranges::all_of(dates, &DueDate::in_time);
  standing.job = without_missed_dates(soonest);
  add_way(choices, std::move(soonest));
  while (choices.ways.back().schedule.ready_at && !choices.none_fewer) {
    const std::size_t sessions = choices.ways.back().schedule.sessions.size();
    if (sessions == 0) break;
    if (stage) stage(fmt::format("looking for fewer than {} sessions", sessions));
    Plan next = standing;
    const Fewer fewer = date_work_in_sessions(next, clocks, span, sessions - 1, &effort);
    choices.none_fewer = fewer == Fewer::proved_none && !late;
    if (fewer != Fewer::found) break;
    next.job = choices.ways.front().job;
    if (late) next.schedule.proof.reset();
    add_way(choices, std::move(next));
  }
  return choices;
}

std::optional<Choices> choices_of(Job job, Instant now, Problems& problems,
                                  const StageListener& stage) {
  auto standing = make_standing(std::move(job), now, problems);
  if (!standing) return std::nullopt;
  const Interval span{standing->now, standing->now + whole_minutes_up(standing->job.horizon)};
  const std::vector<DryingClock> clocks = drying_clocks(standing->job, standing->air);
  return choices(std::move(*standing), clocks, span, stage);
}

}  // namespace tackfree
