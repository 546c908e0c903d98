// Week axis: the time axis that charts share, a strip for each week, with nights and weekends.
#pragma once

#include "tackfree/html/svg.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/words/week.hpp"

#include <utility>
#include <vector>

namespace tackfree {

/// A week as an axis: each day as wide as the others.
class WeekAxis : public Week {
 public:
  static constexpr double left = 46, day_width = 102;  ///< where the days begin; of one day
  static constexpr double head = 20;                   ///< height of the row with the days' names
  static constexpr int night_begins = 20 * 60, night_ends = 6 * 60;  ///< of the local clock

  explicit WeekAxis(Week week) : Week(std::move(week)) {}

  double right() const { return left + day_width * static_cast<double>(day_count()); }
  double width() const { return right() + 2; }  ///< of the whole chart
  /// Where `at` stands; moments outside stand at the nearer end.
  double x(Instant at) const;
  /// The box of that time in a row from `y` on; never narrower than `least`.
  ChartBox box(Interval time, double y, double height, double least = 0.6) const;
};

/// An axis for each week that holds `shown`, without days before or after it.
std::vector<WeekAxis> week_axes(Interval shown, const Figures& figures);

/// What lies behind the curves of one week: days' names, weekends, nights from 8 in the evening to
/// 6 in the morning by the clock, ticks at 6, 12 and 18 h, now, and where known air ends.
void write_axis(Markup& svg, const WeekAxis& week, const Plan& plan, const Figures& figures,
                double height);

}  // namespace tackfree
