#include "tackfree/plan/make_plan.hpp"

#include "tackfree/air/air_readings.hpp"
#include "tackfree/air/indoor_air.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/air/wood_moisture.hpp"
#include "tackfree/learning/slowness.hpp"
#include "tackfree/learning/thirst.hpp"
#include "tackfree/operations/operation_list.hpp"
#include "tackfree/plan/aired_work.hpp"
#include "tackfree/plan/choices.hpp"
#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/early_coats.hpp"
#include "tackfree/plan/left_out.hpp"
#include "tackfree/plan/log_facts.hpp"
#include "tackfree/plan/moves.hpp"
#include "tackfree/plan/notes.hpp"
#include "tackfree/plan/part_notes.hpp"
#include "tackfree/plan/stock.hpp"
#include "tackfree/schedule/busy_hours.hpp"
#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/plan_size.hpp"
#include "tackfree/takeoff/lots.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// `at`, or the next step of the grid as the local clock shows it: 17:43 becomes 17:45.
Instant on_grid(Instant at, Minutes grid) {
  const auto past = at.time_since_epoch() % grid;
  return past == Minutes(0) ? at : at + (grid - past);
}

Fraction wood_moisture_in(const AirState& air) {
  return equilibrium_moisture(air.temperature, relative_humidity(air.temperature, air.vapour));
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

/// What the log has taught, into the job and its coatings.
void learn(Plan& plan, Job& job, const OperationList& list) {
  note_lessons(job, list, plan.air);
  plan.thirst = learnt_thirst(job);
  plan.slowness = learnt_slowness(job);
  for (std::size_t i = 0; i < job.coatings.size(); ++i)
    job.coatings[i].slowness = plan.slowness[i].factor;
}

/// Dates the work by what the job aims at.
void date_by_aim(Plan& plan, Interval span, const StageListener& stage, solver::Effort& effort) {
  if (plan.job.aim == Aim::ready) return date_aired_work(plan, span, &effort);
  Choices found = choices(std::move(plan), span, effort, stage);
  plan = std::move(found.ways.back());
  if (plan.schedule.proof) plan.schedule.proof->fewest_sessions = found.none_fewer;
}

/// The standing plan, where what early coats cost is known.
std::optional<Plan> standing(Job job, Instant now, Problems& problems,
                             const std::map<std::string, EarlyCoat>& early) {
  const Instant start = on_grid(now, job.grid);
  const std::size_t known = problems.size();
  settle_busy_hours(job, {start, start + whole_minutes_up(job.horizon)}, problems);
  check_plan_size(job, 0, problems);
  if (problems.size() > known) return std::nullopt;
  split_into_lots(job, problems);
  check_plan_size(job, 0, problems);
  if (problems.size() > known) return std::nullopt;
  Plan plan;
  plan.now = start;
  plan.takeoff = take_off(job);
  LoggedWork logged = logged_work(job, plan.takeoff, now);
  const Interval span{air_from(job, start), start + whole_minutes_up(job.horizon)};
  auto air = AirSeries::over(job.air, span, problems, readings_in_log(job.history));
  if (!air) return std::nullopt;
  plan.early = early;
  plan.air = std::move(*air);
  plan.wood_moisture = wood_moisture_in(plan.air.at(start));
  plan.board_lag = board_lag(job);
  plan.keyed = std::move(logged.keyed);
  learn(plan, job, logged.list);
  plan.volumes = job_volumes(job, plan.takeoff, thirst_factors(job));
  plan.job = std::move(job);
  list_work(plan);
  check_plan_size(plan.job, plan.list.operations.size(), problems);
  if (problems.size() > known) return std::nullopt;
  return plan;
}

Length all_tape(const SurfaceTakeoff& takeoff) {
  Length sum;
  for (const Masking& masking : takeoff.masking) sum += masking.tape;
  return sum;
}

}  // namespace

std::optional<Plan> make_standing(Job job, Instant now, Problems& problems,
                                  solver::Effort* effort) {
  const auto is_insisted = [](const LogEntry& entry) {
    return entry.kind == LogKind::coat && entry.insisted;
  };
  if (std::ranges::none_of(job.history.entries, is_insisted))
    return standing(std::move(job), now, problems, {});
  const Job given = job;
  auto plan = standing(std::move(job), now, problems, {});
  if (!plan) return std::nullopt;
  solver::Effort own{most_effort};
  price_early_coats(
      *plan, given,
      [](Job then, Instant at, const std::map<std::string, EarlyCoat>& early) {
        Problems untold;  // told for the whole log
        return standing(std::move(then), at, untold, early);
      },
      effort != nullptr ? *effort : own);
  return plan;
}

std::optional<Plan> make_plan(Job given, Instant now, Problems& problems,
                              const StageListener& stage, solver::Effort* effort) {
  solver::Effort own{most_effort};
  if (effort == nullptr) effort = &own;
  const auto begins = [&](PlanningStage at) {
    if (stage) stage({at});
  };
  begins(PlanningStage::air_areas_litres);
  auto standing = make_standing(std::move(given), now, problems, effort);
  if (!standing) return std::nullopt;
  Plan plan = std::move(*standing);
  Job& job = plan.job;
  const Interval span{plan.now, plan.now + whole_minutes_up(job.horizon)};
  begins(PlanningStage::dates);
  date_by_aim(plan, span, stage, *effort);
  plan.moves = moves(plan);
  begins(PlanningStage::waits);
  plan.drying =
      explained_coats(job, plan.list, plan.air, drying_clocks(job, plan.air), plan.schedule);
  plan.course = course(job, plan.list, plan.air, plan.schedule);
  plan.work = attended_work(plan.list, plan.schedule, job.calendar.zone);
  begins(PlanningStage::fumes);
  plan.emissions = emissions(job, plan.volumes);
  plan.room =
      room_judgement(job, vapour_plan(job, plan.list, plan.volumes, plan.emissions, plan.schedule));
  plan.flammable = flammable_times(job, plan.list, plan.schedule, plan.room);
  plan.heater_clash = heater_clash(job, plan.flammable);
  if (plan.room)
    plan.cold_airing =
        coldest_airing(job, plan.list, air_as_aired(plan), plan.schedule, *plan.room);
  plan.cautions = cautions(job, plan.list, plan.volumes, plan.emissions, plan.schedule, plan.room);
  begins(PlanningStage::tins_and_sundries);
  plan.to_come = volumes_to_come(plan.volumes, plan.list);
  plan.tins_short = tins_short(job, plan.list);
  const auto left = tins_left(job, plan.list);
  for (std::size_t i = 0; i < job.coatings.size(); ++i) job.coatings[i].on_shelf = left[i];
  plan.shopping =
      shopping_list(job, plan.to_come, plan.list, plan.schedule, all_tape(plan.takeoff));
  plan.notes = notes(plan);

  begins(PlanningStage::check);
  const auto broken = broken_rules(plan.job, plan.list, plan.air, plan.schedule);
  if (!broken.empty())
    throw std::logic_error(
        fmt::format("the schedule breaks its own rules: {}", fmt::join(broken, "; ")));
  return plan;
}

Plan make_area_plan(Job job) {
  Plan plan;
  plan.takeoff = take_off(job);
  plan.notes = part_notes(job);
  plan.job = std::move(job);
  return plan;
}

}  // namespace tackfree
