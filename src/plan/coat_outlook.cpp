#include "tackfree/plan/coat_outlook.hpp"

#include "tackfree/air/gates_ahead.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/air/recoat_window.hpp"
#include "tackfree/air/wood_moisture.hpp"
#include "tackfree/logged/log_facts.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace tackfree {

namespace {

constexpr Minutes looking_for_open = 14 * one_day;
constexpr Minutes looking_for_best = 7 * one_day;

/// One coating over one stretch of air.
class Outlook {
 public:
  Outlook(const Job& job, std::size_t coating, const AirSeries& air)
      : job_(job),
        coating_(job.coatings.at(coating)),
        air_(air),
        clock_(coating_, air, job.room.air_speed, job.faster_than_label) {}

  GatesAhead ahead(Instant from) const {
    return {coating_.limits, air_, clock_, from, job_.grid, job_.grid};
  }

  void stages(CoatOutlook& result) const {
    for (std::size_t i = 0; i < stage_count; ++i) {
      const auto stage = static_cast<Stage>(i);
      if (!coating_.label_after.at(i)) continue;
      auto why = explained(coating_, stage, air_, job_.room.air_speed, clock_,
                           result.applied + result.putting_on);
      if (why)
        result.stages.push_back(std::move(*why));
      else
        result.never.push_back(stage);
    }
  }

  void gates(CoatOutlook& result) const {
    GatesAhead gates_ahead = ahead(result.applied);
    for (const Gate gate : gates_ahead.failing(0)) result.gates.push_back({gate, std::nullopt});
    const Instant end = std::min(result.applied + looking_for_open, air_.covers().end - job_.grid);
    for (int i = 0; result.applied + i * job_.grid <= end && !result.all_open; ++i) {
      const Instant at = result.applied + i * job_.grid;
      const auto broken = gates_ahead.failing(i);
      for (GateAt& gate : result.gates)
        if (!gate.opens && std::find(broken.begin(), broken.end(), gate.gate) == broken.end())
          gate.opens = at;
      if (broken.empty()) result.all_open = at;
    }
  }

  std::optional<BestHour> best_hour(Instant from) const {
    std::optional<BestHour> best;
    const Stage stage = coating_.needs_sanding_between ? Stage::sand : Stage::recoat;
    const Instant end = std::min(from + looking_for_best, air_.covers().end - job_.grid);
    const Instant first = from + (one_hour - from.time_since_epoch() % one_hour) % one_hour;
    GatesAhead gates_ahead = ahead(first);
    for (Instant at = first; at <= end; at += one_hour) {
      const auto dry = clock_.reached(stage, at + job_.grid);
      if (!dry) continue;
      const Duration wait = to_duration(*dry - at - job_.grid);
      const int grids = static_cast<int>((at - first) / job_.grid);
      if ((!best || wait < best->wait) && gates_ahead.failing(grids).empty())
        best = BestHour{at, wait};
    }
    return best;
  }

 private:
  const Job& job_;
  const Coating& coating_;
  const AirSeries& air_;
  DryingClock clock_;
};

}  // namespace

std::optional<CoatOutlook> coat_outlook(const Job& job, std::size_t coating, Instant applied,
                                        Instant now, Problems& problems) {
  const auto air = AirSeries::over(
      job.air, {std::min(now, applied), std::max(now, applied) + whole_minutes_up(job.horizon)},
      problems, readings_in_log(job.history));
  if (!air) return std::nullopt;
  const Coating& product = job.coatings.at(coating);
  const Outlook outlook(job, coating, *air);
  CoatOutlook result;
  result.coating = coating;
  result.applied = applied;
  result.putting_on = job.grid;
  result.air = air->at(applied);
  result.surface = air->surface_at(applied);
  result.humidity = relative_humidity(result.air.temperature, result.air.vapour);
  result.dew_point = dew_point(result.air.vapour);
  result.wood_moisture = equilibrium_moisture(result.air.temperature, result.humidity);
  outlook.stages(result);
  outlook.gates(result);
  result.best = outlook.best_hour(applied);
  result.recoat_unsanded_until = recoat_unsanded_until(product, *air, applied + result.putting_on);
  if (product.limits.humidity_caution) result.blush = blush_risk(result.air);
  result.typical_from = air->typical_from();
  return result;
}

std::vector<std::vector<DryingExplanation>> explained_coats(const Job& job,
                                                            const OperationList& list,
                                                            const AirSeries& air,
                                                            const std::vector<DryingClock>& clocks,
                                                            const Schedule& schedule) {
  constexpr std::array stages{Stage::touch, Stage::handle, Stage::recoat, Stage::sand,
                              Stage::light_use};
  std::vector<std::vector<DryingExplanation>> all;
  for (const DatedStep& step : schedule.steps) {
    auto& of_step = all.emplace_back();
    const Operation& op = list.operations.at(step.operation);
    if (!op.coating) continue;
    for (const Stage stage : stages)
      if (auto why = explained(
              job.coatings.at(*op.coating), stage, air, job.room.air_speed, clocks.at(*op.coating),
              op.done ? op.done->dries_from() : step.dries_from.value_or(step.end()),
              op.film_for(stage)))
        of_step.push_back(std::move(*why));
  }
  return all;
}

}  // namespace tackfree
