#include "tackfree/plan/cold_airing.hpp"

#include "tackfree/air/indoor_air.hpp"

#include <algorithm>

namespace tackfree {

namespace {

constexpr double air_heat_wh_per_m3_k = 1200.0 / 3600;

AirFlow flow_in(const Job& job, Opening opening) {
  const AirChanges& changes = job.data.air_changes;
  return working_changes(job.room, changes, opening) * *job.room.volume *
         mixing_factor(changes, opening);
}

const Indoors* indoors_of(const Job& job) {
  const auto* mix = std::get_if<AirMix>(&job.air);
  return mix != nullptr && mix->indoors ? &*mix->indoors : nullptr;
}

std::vector<FasterLoss> losses(const Job& job, HeatLoss usual, const RoomJudgement& room) {
  const AirFlow closed = flow_in(job, Opening::closed);
  std::vector<FasterLoss> faster;
  for (const StretchJudgement& stretch : room.stretches)
    for (const AiringSpan& span : stretch.airing) {
      const double more = (flow_in(job, span.opening) - closed).in(cubic_metres_per_hour);
      faster.push_back(
          {span.time, 1 + std::max(0.0, more) * air_heat_wh_per_m3_k / usual.in(watts_per_kelvin)});
    }
  return faster;
}

AirState on_nodes(const std::vector<AirSeries::Node>& nodes, Instant at) {
  const auto after = std::ranges::upper_bound(nodes, at, {}, &AirSeries::Node::at);
  if (after == nodes.begin()) return nodes.front().state;
  if (after == nodes.end()) return nodes.back().state;
  return state_between(*(after - 1), *after, at);
}

/// The room's air with what its openings let in.
std::vector<AirSeries::Node> aired(const Job& job, const Indoors& indoors, const AirSeries& air,
                                   const RoomJudgement& room) {
  if (!indoors.heating) return air.outdoors();
  std::vector<AirSeries::Node> nodes;
  for (const IndoorNode& each :
       indoor_air(air.outdoors(), indoors, losses(job, indoors.heating->loss.value, room)))
    nodes.push_back(each.node);
  return nodes;
}

}  // namespace

std::optional<ColdAiring> coldest_airing(const Job& job, const OperationList& list,
                                         const AirSeries& air, const Schedule& schedule,
                                         const RoomJudgement& room) {
  constexpr Minutes look_every{15};
  const Indoors* indoors = indoors_of(job);
  const bool with_airing = indoors != nullptr && !air.outdoors().empty();
  const std::vector<AirSeries::Node> nodes =
      with_airing ? aired(job, *indoors, air, room) : air.nodes();
  std::optional<ColdAiring> coldest;
  for (const StretchJudgement& stretch : room.stretches)
    for (const std::size_t step : stretch.steps) {
      const Operation& op = list.operations.at(schedule.steps.at(step).operation);
      if (!op.coating) continue;
      const Temperature bears = job.coatings.at(*op.coating).limits.hold_min.value;
      for (const AiringSpan& span : stretch.airing)
        for (Instant at = std::max(span.time.begin, schedule.span.begin); at <= span.time.end;
             at += look_every) {
          const Temperature here = on_nodes(nodes, at).temperature;
          if (!coldest || here - bears < coldest->room - coldest->bears)
            coldest = ColdAiring{here, bears, at, with_airing};
        }
    }
  return coldest;
}

}  // namespace tackfree
