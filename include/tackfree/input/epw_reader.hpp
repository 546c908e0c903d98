// EPW reader: hours of air from a weather file in the EnergyPlus format.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/air.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// The hours in `text`, in order, as those of `year`, whatever years the file names (typical years
/// are put together from several); a file that goes from January to the end of December gives the
/// year after as well. The clock is the file's own standard time, from its LOCATION line; hour 1
/// ends at 01:00. Missing temperatures and dew points (99.9) and humidities (999) are gaps; in a
/// leap year a missing 29 February repeats the 28th. Rows with fewer than 35 fields, hours twice or
/// out of order, and a file without its eight header lines are Problems. Source of the layout:
/// EnergyPlus Auxiliary Programs, "EnergyPlus Weather File (EPW) Data Dictionary".
std::vector<AirRow> parse_epw(std::string_view text, const std::string& file, int year,
                              Problems& problems);

}  // namespace tackfree
