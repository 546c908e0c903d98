// Daily profile: hours of air spread between the low and the high of a day.
#pragma once

#include "tackfree/air/air_nodes.hpp"
#include "tackfree/model/air.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// The temperature at hour 1 to 24 of local standard time.
/// Source: fractions of the daily range, ASHRAE Handbook Fundamentals 2017, ch. 14, table 6.
Temperature temperature_at_hour(Temperature low, Temperature high, int hour);

/// The mean of the 24 hours: high - 0.53625 x range, by the same fractions.
Temperature mean_temperature(Temperature low, Temperature high);

/// A node at each hour of the days; the first day has one at its midnight as well. The vapour
/// pressure is the same all day, that of the dew point, or of the mean humidity at the mean
/// temperature, but never over saturation. Source of that: assumed; the water in the air changes
/// with the weather, not with the hour.
std::vector<AirNode> daily_nodes(const AirDays& lows_and_highs);

/// The month, 1 to 12, whose values serve for `month`: itself where it is given, else the nearest
/// that is, of two the earlier; nothing where none is. Source: assumed.
std::optional<unsigned> month_serving(const AirMonths& months, unsigned month);

/// The days of `span`, local standard time, from typical months: the values of a month hold on its
/// 15th and run straight from month to month; a month that is missing has those of the month that
/// serves for it. Source: assumed. Empty where no month is given.
AirDays typical_days(const AirMonths& months, Interval span);

}  // namespace tackfree
