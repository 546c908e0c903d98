#include "tackfree/fumes/ignition.hpp"

#include "tackfree/schedule/work_time.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

namespace tackfree {

namespace {

/// Source: International Fire Code 2018, limit of class III A.
constexpr Temperature combustible = celsius(93);

bool burns(const Job& job, const std::vector<SolventShare>& mix) {
  return std::ranges::any_of(mix, [&](const SolventShare& share) {
    const auto solvent = std::ranges::find(job.data.solvents, share.solvent, &Solvent::key);
    return solvent != job.data.solvents.end() && solvent->flash_point &&
           solvent->flash_point->value < combustible;
  });
}

bool may_light(const std::optional<HeaterKind>& kind) { return kind != HeaterKind::sealed; }

/// The job's own heater, where it may light vapour.
const Heating* lighting_heating(const Job& job) {
  const auto* mix = std::get_if<AirMix>(&job.air);
  if (mix == nullptr || !mix->indoors || !mix->indoors->heating) return nullptr;
  return may_light(mix->indoors->heating->kind) ? &*mix->indoors->heating : nullptr;
}

/// What else the job warms the room with for a time, where that may light vapour.
std::vector<ConditionedAir> lighting_warmth(const Job& job) {
  const auto* mix = std::get_if<AirMix>(&job.air);
  std::vector<ConditionedAir> found =
      mix != nullptr ? mix->conditioned : std::vector<ConditionedAir>();
  std::erase_if(found, [](const ConditionedAir& each) {
    return each.warmer <= TemperatureDifference() || !may_light(each.heater);
  });
  return found;
}

/// When the smell of this stretch is gone, as far as it is estimated.
Instant smells_until(const Schedule& schedule, const CoatingStretch& stretch,
                     const std::optional<RoomJudgement>& room) {
  Instant until = stretch.time.end;
  const DatedStep& last = schedule.steps.at(stretch.steps.back());
  if (last.session) until = std::max(until, schedule.sessions.at(*last.session).clean_up.end);
  const StretchJudgement* judged = nullptr;
  if (room)
    for (const StretchJudgement& each : room->stretches)
      if (each.steps == stretch.steps) judged = &each;
  if (judged == nullptr || !judged->under_tenth_at) return until + one_day;
  for (const AiringSpan& span : judged->airing) until = std::max(until, span.time.end);
  return std::max(until, *judged->under_tenth_at);
}

}  // namespace

bool gives_flammable_vapour(const Job& job, const Coating& coating, bool thinned) {
  if (coating.flash_point && coating.flash_point->value < combustible) return true;
  return burns(job, coating.cleaner_mix) || (thinned && burns(job, coating.thinner_mix));
}

std::vector<FlammableTime> flammable_times(const Job& job, const OperationList& list,
                                           const Schedule& schedule,
                                           const std::optional<RoomJudgement>& room) {
  std::vector<FlammableTime> times;
  for (const CoatingStretch& stretch : coating_stretches(list, schedule)) {
    const bool flammable = std::ranges::any_of(stretch.steps, [&](std::size_t index) {
      const Operation& op = list.operations.at(schedule.steps.at(index).operation);
      return op.coating &&
             gives_flammable_vapour(job, job.coatings.at(*op.coating), op.thinner > Volume());
    });
    if (!flammable) continue;
    const DatedStep& first = schedule.steps.at(stretch.steps.front());
    const Instant opened =
        first.session ? schedule.sessions.at(*first.session).set_up.begin : first.begin();
    times.push_back({stretch.steps.front(), {opened, smells_until(schedule, stretch, room)}});
  }
  return times;
}

std::optional<HeaterClash> heater_clash(const Job& job, const std::vector<FlammableTime>& times) {
  HeaterClash clash;
  std::vector<Interval> found;
  const auto add = [&](const std::optional<HeaterKind>& kind, Interval on, Interval flammable) {
    const Interval both{std::max(on.begin, flammable.begin), std::min(on.end, flammable.end)};
    if (both.begin >= both.end) return;
    found.push_back(both);
    if (!clash.kind) clash.kind = kind;
  };
  const Heating* heating = lighting_heating(job);
  const std::vector<ConditionedAir> warmth = lighting_warmth(job);
  for (const FlammableTime& flammable : times) {
    if (heating != nullptr)
      for (const Interval& on : daily_hours(job.calendar, heating->hours, flammable.time))
        add(heating->kind, on, flammable.time);
    for (const ConditionedAir& each : warmth)
      add(each.heater, each.time.value_or(flammable.time), flammable.time);
  }
  if (found.empty()) return std::nullopt;
  clash.hours = joined(std::move(found));
  return clash;
}

bool heater_may_light(const Job& job) {
  return lighting_heating(job) != nullptr || !lighting_warmth(job).empty();
}

bool warmed_by_sealed_heater(const Job& job) {
  const auto* mix = std::get_if<AirMix>(&job.air);
  return mix != nullptr && mix->indoors && mix->indoors->heating &&
         !may_light(mix->indoors->heating->kind);
}

std::vector<CoatedAboveFlash> coated_above_flash(const Job& job, const OperationList& list,
                                                 const AirSeries& air, const Schedule& schedule) {
  std::vector<CoatedAboveFlash> all;
  for (const DatedStep& step : schedule.steps) {
    const Operation& op = list.operations.at(step.operation);
    if (op.kind != OperationKind::coat || op.done || !op.coating) continue;
    const auto& flash = job.coatings.at(*op.coating).flash_point;
    const Temperature warmth = air.at(step.begin()).temperature;
    if (!flash || warmth < flash->value) continue;
    const auto known = std::ranges::find(all, *op.coating, &CoatedAboveFlash::coating);
    if (known == all.end())
      all.push_back({*op.coating, warmth});
    else
      known->warmest = std::max(known->warmest, warmth);
  }
  return all;
}

bool has_ignition_source(const Job& job) {
  return !job.room.ignition_sources.empty() || heater_may_light(job);
}

}  // namespace tackfree
