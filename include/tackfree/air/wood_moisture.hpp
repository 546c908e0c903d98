// Wood moisture: the moisture content that wood comes to in air that stays as it is.
#pragma once

#include "tackfree/base/temperature.hpp"
#include "tackfree/base/units.hpp"

namespace tackfree {

/// Equilibrium moisture content, water over dry wood, for 0 to 60 C; the table of the same handbook
/// differs from it by up to half a percent of moisture.
/// Source: Hailwood and Horrobin's equation as in USDA Wood Handbook, ch. 4, and Simpson 1973.
Fraction equilibrium_moisture(Temperature t, Humidity humidity);

/// Where wood for heated rooms should be. Source: common practice, no source.
inline constexpr Fraction driest_for_heated_rooms = percent(6),
                          dampest_for_heated_rooms = percent(9);

}  // namespace tackfree
