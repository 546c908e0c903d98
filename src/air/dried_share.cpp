#include "tackfree/air/dried_share.hpp"

#include "tackfree/air/drying_rate.hpp"
#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

constexpr Minutes one_minute{1};

/// Adds up shares minute by minute, by the middle of each.
class ShareSum {
 public:
  ShareSum(const DryingCoat& coat, const AirSeries& air, Speed air_speed)
      : rate_(*coat.coating, coat.stage),
        air_(air),
        at_(coat.applied),
        factor_(air_speed_factor(coat.coating->law.air_exponent.value, air_speed)) {
    const double film = power(coat.film_ratio, film_exponent(coat.coating->law, coat.stage).value);
    factor_ /= coat.coating->label_after.at(index_of(coat.stage))->value.in(minutes)*film;
    before_ = rate_.relative(air_.at(at_));
  }

  Instant at() const { return at_; }
  double share() const { return share_; }
  void step() {
    at_ += one_minute;
    const double after = rate_.relative(air_.at(at_));
    share_ += factor_ * (before_ + after) / 2;
    before_ = after;
  }

 private:
  StageRate rate_;
  const AirSeries& air_;
  Instant at_;
  double factor_;
  double before_ = 0;  ///< how fast it dries at the last minute
  double share_ = 0;
};

bool has_stage(const DryingCoat& coat) {
  return coat.coating->label_after.at(index_of(coat.stage)).has_value();
}

}  // namespace

std::optional<double> dried_share(const DryingCoat& coat, const AirSeries& air, Speed air_speed,
                                  Instant at) {
  if (!has_stage(coat)) return std::nullopt;
  ShareSum sum(coat, air, air_speed);
  while (sum.at() < at) sum.step();
  return sum.share();
}

std::optional<Instant> share_reached(const DryingCoat& coat, const AirSeries& air, Speed air_speed,
                                     double share) {
  if (!has_stage(coat)) return std::nullopt;
  ShareSum sum(coat, air, air_speed);
  while (sum.at() < air.covers().end && sum.share() < share) sum.step();
  if (sum.share() < share) return std::nullopt;
  return sum.at();
}

}  // namespace tackfree
