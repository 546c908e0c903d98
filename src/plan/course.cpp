#include "tackfree/plan/course.hpp"

#include "tackfree/air/coating_limits.hpp"
#include "tackfree/air/drying_rate.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/schedule/crew.hpp"
#include "tackfree/schedule/work_time.hpp"

#include <algorithm>
#include <optional>
#include <set>

namespace tackfree {

namespace {

/// From now to midnight after the last work, or after the last batch may be used.
Interval days_shown(const Job& job, const Schedule& schedule) {
  Instant last = schedule.span.begin;
  for (const DatedStep& step : schedule.steps)
    if (!step.pieces.empty()) last = std::max(last, step.end());
  for (const DatedOutcome& outcome : schedule.outcomes)
    if (outcome.stage == Stage::light_use && outcome.at) last = std::max(last, *outcome.at);
  const Date day_after = next_day(job.calendar.zone.local(last).on);
  return {schedule.span.begin,
          std::min(schedule.span.end, job.calendar.zone.instant({day_after, 0}))};
}

std::vector<AirHour> air_hours(const AirSeries& air, Interval days) {
  std::vector<AirHour> hours;
  const auto add = [&](Instant at) {
    const AirState state = air.at(at);
    hours.push_back({at, state.temperature, dew_point(state.vapour),
                     relative_humidity(state.temperature, state.vapour)});
  };
  add(days.begin);
  Instant at = days.begin + (one_hour - days.begin.time_since_epoch() % one_hour);
  for (; at < days.end; at += one_hour) add(at);
  add(days.end);
  return hours;
}

std::vector<AirDay> air_days(const std::vector<AirHour>& hours, const Zone& zone) {
  std::vector<AirDay> days;
  for (const AirHour& hour : hours) {
    if (hour.at == hours.back().at) break;  // midnight, of the day after
    const Date on = zone.local(hour.at).on;
    if (days.empty() || days.back().on != on)
      days.push_back({on, hour.temperature, hour.temperature, hour.dew_point, hour.dew_point});
    AirDay& day = days.back();
    day.low = std::min(day.low, hour.temperature);
    day.high = std::max(day.high, hour.temperature);
    day.dew_low = std::min(day.dew_low, hour.dew_point);
    day.dew_high = std::max(day.dew_high, hour.dew_point);
  }
  return days;
}

UnfitAir unfit_air(const Job& job, std::size_t coating, const AirSeries& air, Interval days) {
  constexpr Minutes step{30};
  UnfitAir unfit{coating, {}};
  for (Instant at = days.begin; at < days.end; at += step) {
    if (!put_on_gate(job.coatings.at(coating).limits, air.at(at), air.surface_at(at))) continue;
    const Interval time{at, std::min(at + step, days.end)};
    if (!unfit.times.empty() && unfit.times.back().end == time.begin)
      unfit.times.back().end = time.end;
    else
      unfit.times.push_back(time);
  }
  return unfit;
}

void add_wait(std::vector<WaitSpan>& waits, const WaitSpan& wait) {
  if (wait.time.length() <= Minutes(0)) return;
  if (!waits.empty() && waits.back().batch == wait.batch && waits.back().by == wait.by &&
      waits.back().time.end == wait.time.begin)
    waits.back().time.end = wait.time.end;
  else
    waits.push_back(wait);
}

/// From the end of the batch's work before it to the step: what held it, one reason after another.
void add_waits_before(std::vector<WaitSpan>& waits, const DatedStep& step, std::size_t batch,
                      Instant free) {
  for (const Held& held : step.held) {
    const Instant until = std::min(held.until, step.begin());
    add_wait(waits, {batch, held.by, {free, until}});
    free = std::max(free, until);
  }
  add_wait(waits, {batch, HeldBy::calendar, {free, step.begin()}});
  for (std::size_t i = 1; i < step.pieces.size(); ++i)
    add_wait(waits, {batch, HeldBy::calendar, {step.pieces[i - 1].end, step.pieces[i].begin}});
}

std::vector<WaitSpan> waits_of(const OperationList& list, const Schedule& schedule,
                               std::size_t batch) {
  std::vector<WaitSpan> waits;
  Instant free = schedule.span.begin;
  for (const DatedStep& step : schedule.steps) {
    if (list.operations.at(step.operation).batch != batch || step.pieces.empty()) continue;
    add_waits_before(waits, step, batch, free);
    free = std::max(free, step.end());
  }
  for (const DatedOutcome& outcome : schedule.outcomes)
    if (outcome.batch == batch && outcome.stage == Stage::light_use && outcome.at)
      add_wait(waits, {batch, HeldBy::drying, {free, *outcome.at}});
  return waits;
}

/// The stage of this coat that other work waits for; light use when none does.
Stage awaited_stage(const OperationList& list, std::size_t operation) {
  for (const Operation& other : list.operations)
    for (const Wait& wait : other.waits)
      if (wait.operation == operation && wait.stage && !is_after_coats(other.kind))
        return *wait.stage;
  return Stage::light_use;
}

std::optional<DryingCourse> drying_course(const Job& job, const OperationList& list,
                                          const AirSeries& air, const Schedule& schedule,
                                          std::size_t index) {
  constexpr Minutes fine{10};
  const DatedStep& step = schedule.steps.at(index);
  const Operation& operation = list.operations.at(step.operation);
  if (!operation.coating || step.pieces.empty()) return std::nullopt;
  const Stage stage = awaited_stage(list, step.operation);
  const auto& reached = step.reaches.at(index_of(stage));
  const Coating& coating = job.coatings.at(*operation.coating);
  if (!reached || !coating.label_after.at(index_of(stage))) return std::nullopt;
  DryingCourse result{index, stage, {step.dries_from.value_or(step.end()), *reached}, {0}};
  const StageRate rate(coating, stage);
  double sum = 0;
  for (Instant at = result.time.begin; at < result.time.end; at += fine) {
    const Minutes length = std::min(fine, result.time.end - at);
    sum += rate.relative(air.at(at + length / 2)) * static_cast<double>(length.count());
    const Instant next = at + length;
    if ((next - result.time.begin) % one_hour == Minutes(0) || next == result.time.end)
      result.done.push_back(sum);
  }
  if (sum <= 0) return std::nullopt;
  for (double& done : result.done) done /= sum;
  return result;
}

}  // namespace

Course course(const Job& job, const OperationList& list, const AirSeries& air,
              const Schedule& schedule) {
  Course course;
  course.days = days_shown(job, schedule);
  course.air = air_hours(air, course.days);
  course.air_days = air_days(course.air, job.calendar.zone);
  course.working = anybodys_hours(job, course.days);
  course.no_power_sanding = daily_hours(job.calendar, job.calendar.no_power_sanding, course.days);
  std::set<std::size_t> coatings;
  for (const Operation& operation : list.operations)
    if (operation.coating) coatings.insert(*operation.coating);
  for (const std::size_t coating : coatings)
    course.unfit.push_back(unfit_air(job, coating, air, course.days));
  for (std::size_t batch = 0; batch < job.batches.size(); ++batch)
    for (const WaitSpan& wait : waits_of(list, schedule, batch)) course.waits.push_back(wait);
  for (std::size_t step = 0; step < schedule.steps.size(); ++step)
    if (auto drying = drying_course(job, list, air, schedule, step))
      course.drying.push_back(std::move(*drying));
  return course;
}

}  // namespace tackfree
