// Psychrometrics: vapour pressure, dew point and humidity of air, over liquid water throughout.
#pragma once

#include "tackfree/base/temperature.hpp"
#include "tackfree/base/units.hpp"

namespace tackfree {

/// Saturation vapour pressure over liquid water (below 0 C too), -50 to 100 C.
/// Source: Hyland and Wexler 1983, as in ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 6.
Pressure saturation_pressure(Temperature t);

/// Vapour pressure of air: humidity x saturation pressure.
Pressure vapour_pressure(Temperature t, Humidity humidity);

/// Relative humidity over liquid water, at most 1.
Humidity relative_humidity(Temperature t, Pressure vapour);

/// The temperature at which `vapour` is the saturation pressure; vapour > 0.
Temperature dew_point(Pressure vapour);

}  // namespace tackfree
