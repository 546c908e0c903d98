#include "tackfree/plan/cold_airing.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>

namespace tackfree {

namespace {

constexpr Minutes look_every{15};

/// The nearest so far of all coats.
class Nearest {
 public:
  Nearest(const AirSeries& air, Instant end, bool with_airing)
      : air_(air), end_(end), with_airing_(with_airing) {}

  const std::optional<ColdAiring>& result() const { return result_; }

  void follow(const CoatingLimits& limits, Instant from, const DatedStep& coat) {
    const Instant dry = std::min(end_, coat.reaches[index_of(Stage::touch)].value_or(end_));
    Instant held = coat.end();
    if (limits.hold_put_on_min) held += whole_minutes_up(limits.hold_put_on_min->value);
    for (Instant at = from; at <= dry; at += look_every) {
      warmth(at, limits.hold_min.value);
      dew(at, limits.dew_point_margin.value);
    }
    if (!limits.hold_put_on_min) return;
    for (Instant at = from; at <= std::min(held, end_); at += look_every)
      warmth(at, limits.put_on_min.value);
  }

 private:
  void warmth(Instant at, Temperature bears) {
    const Temperature here = air_.at(at).temperature;
    if (!result_) {
      result_ = ColdAiring{here, bears, at, {}, {}, at, with_airing_};
      result_->spread = spread(at);
    }
    if (here - bears >= result_->room - result_->bears) return;
    result_->room = here;
    result_->bears = bears;
    result_->at = at;
  }

  void dew(Instant at, TemperatureDifference margin) {
    if (result_->margin > TemperatureDifference() &&
        spread(at) - margin >= result_->spread - result_->margin)
      return;
    result_->spread = spread(at);
    result_->margin = margin;
    result_->dew_at = at;
  }

  TemperatureDifference spread(Instant at) const {
    return air_.surface_at(at) - dew_point(air_.at(at).vapour);
  }

  const AirSeries& air_;
  Instant end_;
  bool with_airing_;
  std::optional<ColdAiring> result_;
};

}  // namespace

std::optional<ColdAiring> coldest_airing(const Job& job, const OperationList& list,
                                         const AirSeries& air, const Schedule& schedule,
                                         const RoomJudgement& room) {
  Nearest nearest(air, schedule.span.end, !air.outdoors().empty());
  for (const StretchJudgement& stretch : room.stretches) {
    if (stretch.airing.empty() && !stretch.airing_goes_on) continue;
    for (const std::size_t step : stretch.steps) {
      const DatedStep& coat = schedule.steps.at(step);
      const Operation& op = list.operations.at(coat.operation);
      if (op.coating)
        nearest.follow(job.coatings.at(*op.coating).limits,
                       std::max(coat.begin(), schedule.span.begin), coat);
    }
  }
  return nearest.result();
}

}  // namespace tackfree
