#include "tackfree/plan/make_plan.hpp"

#include "tackfree/plan/aired_work.hpp"
#include "tackfree/plan/choices.hpp"
#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"
#include "tackfree/plan/moves.hpp"
#include "tackfree/plan/notes.hpp"
#include "tackfree/plan/stock.hpp"
#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <set>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// Dates the work by what the job aims at.
DatedWork dated_by_aim(WorkAtHand work, const StageListener& stage, solver::Effort& effort) {
  if (work.job.aim == Aim::ready) return date_aired_work(work, work.span(), &effort);
  Choices found = choices(std::move(work), effort, stage);
  DatedWork dated = std::move(found.ways.back());
  if (dated.schedule.proof) dated.schedule.proof->fewest_sessions = found.none_fewer;
  return dated;
}

/// The coats of a batch that are to come, its sides together: each is taped for anew.
int coats_to_come(const OperationList& list, std::size_t batch) {
  std::set<std::pair<std::size_t, int>> coats;
  for (const Operation& op : list.operations)
    if (op.kind == OperationKind::coat && op.batch == batch && !op.done)
      coats.insert({op.step, op.coat});
  return static_cast<int>(coats.size());
}

Length all_tape(const DatedWork& work) {
  const std::vector<Batch>& batches = work.job.batches;
  Length sum;
  for (const Masking& masking : work.takeoff.masking) {
    const Batch* batch = find_named(batches, work.job.parts.at(masking.part).batch);
    if (batch == nullptr) continue;
    sum +=
        coats_to_come(work.list, static_cast<std::size_t>(batch - batches.data())) * masking.tape;
  }
  return sum;
}

}  // namespace

std::optional<Plan> make_plan(const Job& given, Instant now, Problems& problems,
                              const StageListener& stage, solver::Effort* effort) {
  solver::Effort own{most_effort};
  if (effort == nullptr) effort = &own;
  const auto begins = [&](PlanningStage at) {
    if (stage) stage({at});
  };
  begins(PlanningStage::air_areas_litres);
  auto at_hand = make_work_at_hand(given, now, problems, effort);
  if (!at_hand) return std::nullopt;
  begins(PlanningStage::dates);
  // From here on each line takes what it needs; the plan goes nowhere before it is whole.
  Plan plan{dated_by_aim(std::move(*at_hand), stage, *effort)};
  const Job& job = plan.job;
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
  const auto tins = tins_left(job, plan.list);
  plan.shopping = shopping_list(job, tins, thinners_left(job, plan.list), plan.to_come, plan.list,
                                plan.schedule, all_tape(plan));
  plan.left_over = left_over(job, tins, plan.list, plan.schedule, plan.shopping);
  plan.notes = notes(plan);

  begins(PlanningStage::check);
  const auto broken = broken_rules(job, plan.list, plan.air, plan.schedule);
  if (!broken.empty())
    throw std::logic_error(
        fmt::format("the schedule breaks its own rules: {}", fmt::join(broken, "; ")));
  return plan;
}

}  // namespace tackfree
