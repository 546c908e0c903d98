// Air rows reader: hours of air from a CSV file whose columns and units the job describes.
#pragma once

#include "tackfree/model/air.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// Temperatures of air that a file may hold.
inline constexpr NumberRange air_temperature{-60, 60, "C"};

/// How a rows file is to be read, as the job says it.
struct AirRowsFormat {
  std::string time_column;
  bool time_is_local = false;  ///< else UTC
  std::string temperature_column;
  bool in_fahrenheit = false;    ///< temperature and dew point
  std::string dew_point_column;  ///< empty: none
  std::string humidity_column;   ///< empty: none; in percent
  std::optional<int> replay_in_year;
};

/// The rows in `text`, in order of time. When they are replayed, the year of the first row becomes
/// `replay_in_year`, and every row moves by as many years, by its UTC date. Rows without a
/// temperature, or without dew point and humidity both, are gaps and left out; other faults are
/// Problems.
AirRows parse_air_rows(std::string_view text, const std::string& file, const AirRowsFormat& format,
                       const Zone& zone, Problems& problems);

}  // namespace tackfree
