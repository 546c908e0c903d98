// Air: what the person knows about the air in the room: a constant state or hourly rows.
#pragma once

#include "tackfree/base/temperature.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace tackfree {

/// The same air all the time.
struct ConstantAir {
  Temperature temperature;
  Humidity humidity;
};

/// The air at one time. At least one of dew point and humidity is there; the dew point counts.
struct AirRow {
  Instant at;
  Temperature temperature;
  std::optional<Temperature> dew_point;
  std::optional<Humidity> humidity;
  int line = 0;  ///< in the rows file
};

/// Hourly rows, in order of time, taken as the room's own air.
struct AirRows {
  std::string file;                ///< as named in the job
  std::vector<AirRow> rows;        ///< already moved to the year they are replayed in
  std::optional<int> recorded_in;  ///< year of the original rows, if they are replayed
  std::string origin;              ///< who measured them, in the person's words
};

using AirRecord = std::variant<ConstantAir, AirRows>;

}  // namespace tackfree
