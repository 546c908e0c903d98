// Days axis: the time axis that charts share, a strip for a few days, with nights and weekends.
#pragma once

#include "tackfree/html/svg.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/words/week.hpp"

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace tackfree {

/// A strip of days as an axis: each day as wide as the others. It is as wide as a phone shows with
/// letters of full size; wider screens put several strips beside each other.
class DaysAxis : public Week {
 public:
  static constexpr std::size_t most_days = 4;         ///< in a strip
  static constexpr double left = 32, day_width = 73;  ///< where the days begin; of one day
  static constexpr double width = left + most_days * day_width + 4;  ///< of the whole chart
  static constexpr double head = 20;  ///< height of the row with the days' names
  static constexpr int night_begins = 20 * 60, night_ends = 6 * 60;  ///< of the local clock

  explicit DaysAxis(Week shown) : Week(std::move(shown)) {}

  double right() const { return left + day_width * static_cast<double>(day_count()); }
  /// Where `at` stands; moments outside stand at the nearer end.
  double x(Instant at) const;
  /// The box of that time in a row from `y` on; never narrower than `least`.
  ChartBox box(Interval time, double y, double height, double least = 0.6) const;
};

/// Strips that hold `shown`, without days before or after it.
std::vector<DaysAxis> days_axes(Interval shown, const Figures& figures);

/// The days of a strip, and where known air ends within it.
std::string days_caption(const DaysAxis& strip, const Plan& plan, const Figures& figures);

/// The names of the days above a strip, weekends darker.
void write_day_names(Markup& svg, const DaysAxis& strip, const Zone& zone);

/// What lies behind one row of a strip: nights from 8 in the evening to 6 in the morning by the
/// clock, midnights, now, and where known air ends. Between the rows there is room for labels.
void write_ground(Markup& svg, const DaysAxis& strip, const Plan& plan, double top, double height);

/// The looks that every strip has: nights, now, and where known air ends if it does.
std::vector<LegendEntry> ground_legend(const Plan& plan, const Figures& figures);

}  // namespace tackfree
