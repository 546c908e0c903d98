// Week axis: the time axis that charts share, a strip for each week, with nights and weekends.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/report/figures.hpp"
#include "tackfree/report/svg.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// The days of one week that are shown, each as wide as the others, from midnight to midnight.
class WeekAxis {
 public:
  static constexpr double left = 46, day_width = 102;  ///< where the days begin; of one day
  static constexpr double head = 20;                   ///< height of the row with the days' names
  static constexpr int night_begins = 20 * 60, night_ends = 6 * 60;  ///< of the local clock

  /// Two midnights or more, in order.
  explicit WeekAxis(std::vector<Instant> midnights) : midnights_(std::move(midnights)) {}

  const std::vector<Instant>& midnights() const { return midnights_; }
  std::size_t day_count() const { return midnights_.size() - 1; }
  double right() const { return left + day_width * static_cast<double>(day_count()); }
  double width() const { return right() + 2; }  ///< of the whole chart
  Interval time() const { return {midnights_.front(), midnights_.back()}; }
  /// What of `time` lies in this week; nothing when none of it does.
  std::optional<Interval> within(Interval time) const;
  /// Where `at` stands; moments outside stand at the nearer end.
  double x(Instant at) const;
  /// The box of that time in a row from `y` on; never narrower than `least`.
  ChartBox box(Interval time, double y, double height, double least = 0.6) const;

 private:
  std::vector<Instant> midnights_;
};

/// The weeks that hold `shown`, without days before or after it.
std::vector<WeekAxis> weeks_of(Interval shown, const Figures& figures);

/// `Mon 5 Apr to Sun 11 Apr`
std::string week_words(const WeekAxis& week, const Figures& figures);

/// What lies behind the curves of one week: days' names, weekends, nights from 8 in the evening to
/// 6 in the morning by the clock, ticks at 6, 12 and 18 h, now, and where known air ends.
void write_axis(Markup& svg, const WeekAxis& week, const Plan& plan, const Figures& figures,
                double height);

}  // namespace tackfree
