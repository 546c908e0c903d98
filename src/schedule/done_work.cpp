#include "tackfree/schedule/done_work.hpp"

#include "tackfree/schedule/check_shop_rules.hpp"
#include "tackfree/takeoff/lots.hpp"

#include <algorithm>
#include <map>

namespace tackfree {

namespace {

/// Rule 1: what the label asks at the least, whatever the thumb says.
Instant by_label(const Job& job, const Operation& coat, Stage stage) {
  const Coating& coating = job.coatings.at(*coat.coating);
  const auto& label = coating.label_after.at(index_of(stage));
  if (job.faster_than_label || !label) return coat.done->time.end;
  Duration least = label->value;
  for (const LabelPoint& point : coating.label_points.at(index_of(stage)))
    least = std::min(least, point.after);
  return coat.done->time.end + whole_minutes_up(least);
}

}  // namespace

std::optional<Instant> wait_over(const Job& job, const OperationList& list,
                                 const std::vector<DryingClock>& clocks, const Wait& wait,
                                 Instant end) {
  if (wait.next_day) {
    const Zone& zone = job.calendar.zone;
    return zone.instant({next_day(zone.local(end - Minutes(1)).on), 0});
  }
  if (!wait.stage && !wait.dry_for) return end;
  const Operation& coat = list.operations.at(wait.operation);
  const DryingClock& clock = clocks.at(*coat.coating);
  return wait.stage ? clock.reached(*wait.stage, end, coat.film_for(*wait.stage) * wait.films)
                    : clock.dried_for(*wait.dry_for, end, coat.film_ratio);
}

std::optional<Instant> done_reaches(const Job& job, const Operation& coat, const DryingClock& clock,
                                    Stage stage, int films) {
  const Done& done = *coat.done;
  auto at = clock.reached(stage, done.dries_from(), coat.film_for(stage) * films);
  // The thumb says nothing of what is thicker, as a run is, or what is still soft below.
  if (done.dry_since && films == 1 && !done.counts_from && depth_of(stage) == Depth::recoat) {
    const Instant tried = std::max(*done.dry_since, by_label(job, coat, stage));
    at = at ? std::min(*at, tried) : tried;
  }
  if (at && done.not_dry_before && stage >= done.not_dry_to)
    at = std::max(*at, *done.not_dry_before);
  return at;
}

std::optional<Instant> done_wait_over(const Job& job, const OperationList& list,
                                      const std::vector<DryingClock>& clocks, const Wait& wait) {
  const Operation& before = list.operations.at(wait.operation);
  const Done& done = *before.done;
  if (done.skipped) return done.time.end;
  auto at =
      wait.stage
          ? done_reaches(job, before, clocks.at(*before.coating), *wait.stage, wait.films)
          : wait_over(job, list, clocks, wait, wait.dry_for ? done.dries_from() : done.time.end);
  if (at && wait.dry_for && done.not_dry_before) at = std::max(*at, *done.not_dry_before);
  if (at) *at += whole_minutes_up(wait.delay);
  return at;
}

std::vector<DustKept> kept_by_dust(const Job& job, const OperationList& list,
                                   const std::vector<DryingClock>& clocks, const Operation& work) {
  const bool dusty = work.grit.has_value(), wet = work.kind == OperationKind::coat;
  std::vector<DustKept> all;
  for (std::size_t i = 0; i < list.operations.size(); ++i) {
    const Operation& other = list.operations[i];
    if (!other.done || other.skipped() || in_other_rooms(job, other.batch, work.batch)) continue;
    if (dusty && other.coating)
      all.push_back({i, done_reaches(job, other, clocks.at(*other.coating), Stage::dust_free)});
    if (wet && other.grit)
      all.push_back(
          {i, other.done->time.end + whole_minutes_up(job.data.labour.dust_settles.value)});
  }
  return all;
}

std::vector<SpaceHeld> space_held(const Job& job, const OperationList& list,
                                  const std::vector<DryingClock>& clocks) {
  std::map<std::size_t, std::optional<Instant>> until;  // by batch
  for (const Operation& op : list.operations) {
    if (op.kind != OperationKind::coat || !op.done || op.skipped()) continue;
    if (!space_in_room(job, op.batch)) continue;
    const auto at = done_reaches(job, op, clocks.at(*op.coating), Stage::handle);
    const auto [known, first] = until.try_emplace(op.batch, at);
    if (!first && known->second) known->second = at ? std::max(*known->second, *at) : at;
  }
  std::vector<SpaceHeld> all;
  all.reserve(until.size());
  for (const auto& [batch, at] : until) all.push_back({batch, space_taken(job, batch), at});
  return all;
}

}  // namespace tackfree
