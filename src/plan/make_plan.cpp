#include "tackfree/plan/make_plan.hpp"

#include "tackfree/air/indoor_air.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/air/wood_moisture.hpp"
#include "tackfree/learning/thirst.hpp"
#include "tackfree/operations/operation_list.hpp"
#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/plan/notes.hpp"
#include "tackfree/plan/part_notes.hpp"
#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/make_schedule.hpp"
#include "tackfree/schedule/missed_windows.hpp"
#include "tackfree/takeoff/lots.hpp"

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

/// Lists and dates the operations; where a coat misses the window of the one below, once more with
/// sanding before it (rule 2).
void schedule_within_windows(Plan& plan, const Job& job, const std::vector<DryingClock>& clocks,
                             Interval span) {
  KeyedCoats missed;
  do {
    plan.keyed.merge(missed);
    plan.list = operation_list(job, plan.takeoff, plan.volumes, plan.keyed);
    plan.schedule = make_schedule(job, plan.list, plan.air, clocks, span);
    missed = missed_windows(job, plan.list, plan.air, plan.schedule);
  } while (!missed.empty());
}

Length all_tape(const SurfaceTakeoff& takeoff) {
  Length sum;
  for (const Masking& masking : takeoff.masking) sum += masking.tape;
  return sum;
}

}  // namespace

std::optional<Plan> make_plan(Job job, Instant now, Problems& problems,
                              const StageListener& stage) {
  const auto begins = [&](const char* what) {
    if (stage) stage(what);
  };
  const Instant start = on_grid(now, job.grid);
  const Interval span{start, start + whole_minutes_up(job.horizon)};
  begins("working out the air");
  auto air = AirSeries::over(job.air, span, problems);
  if (!air) return std::nullopt;
  split_into_lots(job, problems);
  if (!problems.empty()) return std::nullopt;
  const std::vector<double> thirst = thirst_factors(job);

  Plan plan;
  plan.now = start;
  plan.air = std::move(*air);
  plan.wood_moisture = wood_moisture_in(plan.air.at(start));
  plan.board_lag = board_lag(job);
  begins("taking off areas and litres");
  plan.takeoff = take_off(job);
  plan.volumes = job_volumes(job, plan.takeoff, thirst);
  begins("dating the steps");
  const std::vector<DryingClock> clocks = drying_clocks(job, plan.air);
  schedule_within_windows(plan, job, clocks, span);
  begins("explaining the waits");
  plan.drying = explained_coats(job, plan.list, plan.air, clocks, plan.schedule);
  plan.course = course(job, plan.list, plan.air, plan.schedule);
  plan.work = attended_work(plan.list, plan.schedule, job.calendar.zone);
  begins("judging the fumes");
  plan.emissions = emissions(job, plan.volumes);
  plan.room =
      room_judgement(job, vapour_plan(job, plan.list, plan.volumes, plan.emissions, plan.schedule));
  if (plan.room)
    plan.cold_airing = coldest_airing(job, plan.list, plan.air, plan.schedule, *plan.room);
  plan.cautions = cautions(job, plan.list, plan.volumes, plan.emissions, plan.schedule, plan.room);
  begins("counting tins and sundries");
  plan.shopping =
      shopping_list(job, plan.volumes, plan.list, plan.schedule, all_tape(plan.takeoff));
  plan.job = std::move(job);
  plan.notes = notes(plan);

  begins("checking the schedule against its rules");
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
