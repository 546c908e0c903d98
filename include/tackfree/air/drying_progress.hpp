// Drying progress: how far films of one law dry over a series, summed once and then looked up.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying_rate.hpp"
#include "tackfree/base/time.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace tackfree {

/// One minute at the rate 1 in the fixed point of progress; 64 bits hold four thousand years of
/// them.
inline constexpr double progress_per_minute = 4294967296.0;

/// The air of a series where rates are taken: its ends, its nodes, and whole multiples of `step`
/// counted from 1970, so that where a series begins changes nothing. Made once for all coatings.
struct RatePoints {
  struct Point {
    Instant at;
    HumidAir air;
  };
  Minutes step;  ///< divides an hour
  std::vector<Point> points;
};

/// Five minutes between rates change a finish by less than half a minute against one minute.
inline constexpr Minutes rate_step{5};
RatePoints rate_points(const AirSeries& air, Minutes step = rate_step);

/// The integral of one rate over a series, known at each step and straight within it. A step in
/// which drying stops or sets in, a row falls, or the series begins or ends, is known at each
/// minute. Fixed point, so that two questions about one stretch have one answer.
class DryingProgress {
 public:
  using Rate = std::function<double(const HumidAir&)>;

  /// `rate` is never negative, and is multiplied by `factor`.
  DryingProgress(const Rate& rate, const RatePoints& air, double factor);

  /// The first whole minute from `start` on, within the series, at which `amount` is done.
  std::optional<Instant> first_minute(Instant start, std::int64_t amount) const;

 private:
  void sum(const Rate& rate, const std::vector<RatePoints::Point>& points, double per_rate_minute);
  void note_hours();
  /// A minute of the series: how many steps and then minutes after the first step begins.
  struct Place {
    std::size_t step;
    std::int64_t minute;
  };
  Place place_of(Instant at) const;
  std::size_t first_step_reaching(std::size_t from, std::int64_t done) const;
  std::int64_t done_at(const Place& place) const;

  Interval covers_;
  Minutes step_;
  std::size_t steps_an_hour_;
  Instant first_step_;                   ///< at or just before the series begins
  std::vector<std::int64_t> done_;       ///< where each step begins, and at the end of the last
  std::vector<std::int64_t> hour_done_;  ///< every so many steps as an hour has: quick to search
  // Steps that are known at each minute: which ones, and their minutes one after another.
  std::vector<bool> is_by_minute_;
  std::vector<std::size_t> by_minute_;
  std::vector<std::int64_t> minute_done_;
};

}  // namespace tackfree
