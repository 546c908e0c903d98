#include "tackfree/plan/make_work_at_hand.hpp"

#include "tackfree/air/air_readings.hpp"
#include "tackfree/air/indoor_air.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/air/wood_moisture.hpp"
#include "tackfree/learning/slowness.hpp"
#include "tackfree/logged/coat_trials.hpp"
#include "tackfree/logged/left_out.hpp"
#include "tackfree/logged/logged_hours.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/early_coat_price.hpp"
#include "tackfree/plan/listed_work.hpp"
#include "tackfree/schedule/busy_hours.hpp"
#include "tackfree/schedule/plan_size.hpp"
#include "tackfree/takeoff/lots.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <variant>

namespace tackfree {

namespace {

/// `at`, or the next step of the grid as the local clock shows it: 17:43 becomes 17:45.
Instant on_grid(Instant at, Minutes grid) {
  const auto past = at.time_since_epoch() % grid;
  return past == Minutes(0) ? at : at + (grid - past);
}

/// Where wood settles in the mean of what each hour would bring it to: it follows days, not hours.
Fraction wood_moisture_in(const AirSeries& air, Interval time) {
  Fraction sum;
  double count = 0;
  for (Instant at = time.begin; at < time.end; at += one_hour, ++count) {
    const AirState state = air.at(at);
    sum +=
        equilibrium_moisture(state.temperature, relative_humidity(state.temperature, state.vapour));
  }
  return sum / count;
}

Duration board_lag(const Job& job) {
  const auto* mix = std::get_if<AirMix>(&job.air);
  return mix != nullptr && mix->boards ? board_time_constant(mix->boards->thickness) : Duration();
}

// What was put on before has long dried; a year that was mistyped would cost minutes.
constexpr Minutes longest_look_back = 2 * 366 * one_day;

/// From the first coat of the log on, as far back as the air is known; else from the plan's start.
Instant air_from(const Job& job, Instant start) {
  Instant from = std::min(start, first_coat_at(job.history).value_or(start));
  from = std::max(from, start - longest_look_back);
  if (const auto known = known_from(job.air)) from = std::min(start, std::max(from, *known));
  return from;
}

/// The last week before now as far as its air is known, a day of it at the least; else the next.
void settle_wood(WorkAtHand& work) {
  constexpr Minutes week = 7 * one_day;
  const auto known = known_from(work.job.air);
  const Instant from = std::max(work.now - week, known.value_or(work.now - week));
  Problems none;
  work.wood_week = {from, work.now};
  if (work.now - from >= one_day)
    if (const auto past = AirSeries::over(work.job.air, work.wood_week, none)) {
      work.wood_moisture = wood_moisture_in(*past, work.wood_week);
      return;
    }
  work.wood_week = {work.now, std::min(work.now + week, work.span().end)};
  work.wood_moisture = wood_moisture_in(work.air, work.wood_week);
}

/// The job in lots, with the busy times and the hours of the log worked out; nothing where it is
/// too large.
std::optional<Job> job_in_lots(const Job& given, Instant now, Problems& problems) {
  const std::size_t known = problems.size();
  Job job = given;
  const Instant start = on_grid(now, job.grid);
  apply_logged_hours(job, now);
  settle_busy_hours(job, {start, start + whole_minutes_up(job.horizon)}, problems);
  check_plan_size(job, 0, problems);
  if (problems.size() > known) return std::nullopt;
  split_into_lots(job, problems);
  check_plan_size(job, 0, problems);
  if (problems.size() > known) return std::nullopt;
  return job;
}

/// The work, where what early coats cost is known.
std::optional<WorkAtHand> work_with(const Job& given, Instant now, Problems& problems,
                                    const std::map<std::string, EarlyCoat>& early) {
  const std::size_t known = problems.size();
  WorkAtHand work;
  work.now = on_grid(now, given.grid);
  auto job = job_in_lots(given, now, problems);
  if (!job) return std::nullopt;
  work.job = std::move(*job);
  work.takeoff = take_off(work.job);
  LoggedWork logged = logged_work(work.job, work.takeoff, now);
  work.job.history = std::move(logged.history);
  work.facts = std::move(logged.facts);
  work.keyed = std::move(logged.keyed);
  work.early = early;
  auto air = AirSeries::over(work.job.air, {air_from(work.job, work.now), work.span().end},
                             problems, readings_in_log(work.job.history));
  if (!air) return std::nullopt;
  work.air = std::move(*air);
  settle_wood(work);
  work.board_lag = board_lag(work.job);
  work.lessons = lessons_of(work.job, logged.list, work.air);
  work.thirst = learnt_thirst(work.job, work.lessons.coats);
  work.slowness = learnt_slowness(work.job, work.lessons.tried);
  for (std::size_t i = 0; i < work.job.coatings.size(); ++i)
    work.job.coatings[i].slowness = work.slowness[i].factor;
  work.volumes = job_volumes(work.job, work.takeoff, factors_of(work.thirst));
  work.list = listed_work(work);
  check_plan_size(work.job, work.list.operations.size(), problems);
  if (problems.size() > known) return std::nullopt;
  return work;
}

}  // namespace

std::optional<WorkAtHand> make_work_at_hand(const Job& job, Instant now, Problems& problems,
                                            solver::Effort* effort) {
  const auto is_insisted = [](const LogEntry& entry) {
    return entry.kind == LogKind::coat && entry.insisted;
  };
  auto work = work_with(job, now, problems, {});
  if (!work || std::ranges::none_of(job.history.entries, is_insisted)) return work;
  solver::Effort own{most_effort};
  price_early_coats(
      *work, job,
      [](const Job& then, Instant at, const std::map<std::string, EarlyCoat>& early) {
        Problems untold;  // told for the whole log
        return work_with(then, at, untold, early);
      },
      effort != nullptr ? *effort : own);
  return work;
}

}  // namespace tackfree
