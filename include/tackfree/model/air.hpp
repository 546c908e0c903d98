// Air: what the person knows about the air: hours, days, typical months, and the room in it.
#pragma once

#include "tackfree/base/sourced.hpp"
#include "tackfree/base/temperature.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/model/work_calendar.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
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

/// The low and high of a day, and the water in its air: a dew point, or the mean humidity.
struct DayRange {
  Temperature low, high;
  std::optional<Temperature> dew_point;
  std::optional<Humidity> humidity;
  int line = 0;
};

/// Lows and highs of days one after another.
struct AirDays {
  struct Day {
    Instant begins;  ///< midnight in local standard time
    DayRange range;
  };
  std::vector<Day> days;  ///< in order
  std::string origin;     ///< who says so, in the person's words
};

/// What is typical of each month at this place; not every month need be there.
struct AirMonths {
  std::array<std::optional<DayRange>, 12> months;  ///< January first
  Minutes standard_offset{0};                      ///< local standard time less UTC
  std::string origin;
};

/// One of several accounts of the air, joined in order.
struct AirSource {
  std::string name;  ///< `forecast`
  std::variant<ConstantAir, AirRows, AirDays, AirMonths> what;
  int line = 0;
};

/// How a heater makes its warmth: with a flame, with wires or rods that glow, or with nothing hot
/// enough to light vapour open to the room.
enum class HeaterKind { flame, glowing, sealed };
inline constexpr std::array<std::string_view, 3> heater_kind_words{"flame", "glowing", "sealed"};

/// Of a room of which nothing is said. Source: assumed; no measured garage was found. The loss is
/// that of a double garage of 36 m2, partly insulated.
inline constexpr Duration usual_time_constant = hours(6);
inline constexpr HeatLoss usual_heat_loss = watts_per_kelvin(150);

/// A heater that a thermostat turns on in some hours of the day.
struct Heating {
  Temperature set_point;
  std::optional<HeaterKind> kind;  ///< nothing: not said, so every caution on flames holds
  std::vector<DayWindow> hours;    ///< of the local day
  Sourced<HeatLoss> loss;          ///< of the room to outdoors
  Sourced<Power> heater;           ///< the most it gives
  Zone zone = Zone::utc();
};

/// A room that follows the air outdoors.
struct Indoors {
  Sourced<Duration> time_constant;
  std::optional<Heating> heating;
  std::optional<Humidity> humidity_ceiling;  ///< of a dehumidifier
};

/// What the person does to the air of the room for a time: so much warmer and drier than all else
/// that is known of it makes it. Warming adds no water to the air.
struct ConditionedAir {
  std::optional<Interval> time;      ///< nothing: as long as the plan goes
  TemperatureDifference warmer;      ///< 0 to 30 K
  Humidity drier;                    ///< so many points of relative humidity less, 0 to 60
  std::optional<HeaterKind> heater;  ///< what warms it; nothing: not said
  friend bool operator==(const ConditionedAir&, const ConditionedAir&) = default;
};

/// The boards to be coated, which warm and cool behind the air.
struct Boards {
  Length thickness;
  bool from_outdoors = false;  ///< brought in as the plan begins; else as warm as the room
};

/// Sources joined in order, and what stands between them and the work.
struct AirMix {
  std::string file;  ///< that names the sources
  std::vector<AirSource> sources;
  std::optional<Indoors> indoors;
  std::optional<Boards> boards;
  std::vector<ConditionedAir> conditioned = {};  ///< all of those at a time add up
};

/// What a thermometer in the room showed, and a hygrometer where there is one.
struct AirReading {
  Instant at;
  Temperature temperature;
  std::optional<Humidity> humidity;
};

using AirRecord = std::variant<ConstantAir, AirRows, AirMix>;

}  // namespace tackfree
