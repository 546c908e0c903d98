// Kept limits: the one comparison of air with each limit of a coating, for planner and checker.
#pragma once

#include "tackfree/air/air_series.hpp"

namespace tackfree {

/// What stands exactly at a limit keeps it. Figures that were written in other units, or worked out
/// from others, may be off by a millionth of a kelvin, or a ten-millionth of the humidity or the
/// vapour pressure: so much is rounding.
bool is_warm_enough(Temperature temperature, Temperature least);
bool is_cool_enough(Temperature temperature, Temperature most);
bool is_dry_enough(const AirState& air, Humidity most);

/// Is the surface so far above the dew point of the air? Compared as vapour pressures: saturation
/// pressure grows with temperature, so this is the same as that the vapour would not condense on
/// something colder than the surface by the margin.
bool is_clear_of_dew(const AirState& air, Temperature surface, TemperatureDifference margin);

}  // namespace tackfree
