// Air and coatings for the tests of this folder: laws of the shipped data, labels as asked.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/text_file.hpp"
#include "tackfree/model/coating.hpp"

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "shipped_data.hpp"

namespace tackfree::testing {

inline Instant instant(const char* text) {
  const auto at = parse_instant(text);
  if (!at) throw std::invalid_argument(text);
  return *at;
}

/// Air that hardly moves, as in a closed room.
inline constexpr Speed sheltered = metres_per_second(0.10);

/// Constant cases: 1e-6 relative, a little over the last printed digit.
inline bool agrees(double found, double expected) {
  return std::abs(found / expected - 1.0) < 1e-6;
}

/// A law of the test's own, for what must hold of any.
inline DryingLaw arrhenius_law(double energy_kj, double air_exponent, double stops_below_c) {
  DryingLaw law;
  law.activation_energy.value = kilojoules_per_mole(energy_kj);
  law.air_exponent.value = air_exponent;
  law.stops_below.value = celsius(stops_below_c);
  law.film_exponents[0].value = 1.0;
  law.film_exponents[1].value = 1.5;
  law.film_exponents[2].value = 2.0;
  return law;
}
inline DryingLaw lacquer_law() { return shipped_law("lacquer"); }
inline DryingLaw shellac_law() { return shipped_law("shellac"); }
inline DryingLaw oxidative_law() { return shipped_law("oxidative"); }
inline DryingLaw drying_oil_law() { return shipped_law("drying_oil"); }
inline DryingLaw waterborne_law() { return shipped_law("waterborne"); }
inline DryingLaw two_component_law() { return shipped_law("two_component"); }
/// No class cures by the water of the air yet, so no data holds such a law.
inline DryingLaw moisture_law() {
  DryingLaw law = arrhenius_law(10, 0.20, 0);
  law.driver = DryingLaw::Driver::vapour_pressure;
  return law;
}

using Label = std::vector<std::pair<Stage, Duration>>;

inline Coating coating(const DryingLaw& law, const Label& label, double label_c = 23) {
  Coating coating;
  coating.law = law;
  coating.label_temperature = celsius(label_c);
  for (const auto& [stage, after] : label)
    coating.label_after.at(index_of(stage)) = sourced(after, Origin::label);
  return coating;
}

inline AirState air_at(double temperature_c, double humidity_pct) {
  return {celsius(temperature_c),
          vapour_pressure(celsius(temperature_c), humidity_percent(humidity_pct))};
}

inline AirSeries series(const AirRecord& record, Interval span) {
  Problems problems;
  auto air = AirSeries::over(record, span, problems);
  if (!air) throw std::runtime_error(problems.empty() ? "no series" : to_text(problems.front()));
  return *air;
}
inline AirSeries constant_air(double temperature_c, double humidity_pct, Interval span) {
  return series(ConstantAir{celsius(temperature_c), humidity_percent(humidity_pct)}, span);
}

/// A row from numbers, `line` counted as in a file with one head line.
inline AirRow row(Instant at, double temperature_c, double dew_point_c, int line = 0) {
  return {.at = at,
          .temperature = celsius(temperature_c),
          .dew_point = celsius(dew_point_c),
          .humidity = std::nullopt,
          .line = line};
}

/// Hourly rows from `begin` on, one for each temperature, all with the same dew point.
inline AirRows hourly(Instant begin, const std::vector<double>& temperatures_c,
                      double dew_point_c) {
  AirRows rows{.file = "garage.csv", .rows = {}, .recorded_in = std::nullopt, .origin = "made up"};
  int hour = 0;
  for (double t : temperatures_c) {
    rows.rows.push_back(row(begin + hour * Minutes(60), t, dew_point_c, hour + 2));
    ++hour;
  }
  return rows;
}

/// Numbers that are the same on every machine: a linear congruential generator (Knuth's MMIX
/// constants, from memory), uniform in [0, 1).
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  double roll() {
    state_ = state_ * 6364136223846793005U + 1442695040888963407U;
    return static_cast<double>(state_ >> 11U) / 9007199254740992.0;
  }
  double between(double low, double high) { return low + (high - low) * roll(); }

 private:
  std::uint64_t state_;
};

/// Ten days of air that wanders, now and then below freezing and above 85 % humidity.
inline AirRows random_rows(std::uint64_t seed, Instant begin, int hours_long) {
  Dice dice(seed);
  AirRows rows = hourly(begin, {}, 0);
  double t = dice.between(-2, 20);
  for (int hour = 0; hour < hours_long; ++hour) {
    t += dice.between(-3, 3) + (9 - t) * 0.1;
    rows.rows.push_back(row(begin + hour * Minutes(60), t, t - dice.between(0, 10), hour + 2));
  }
  return rows;
}

/// The rows of tests/published/jfk_2013_10_08.csv, its local clock taken as UTC.
inline AirRows jfk_rows() {
  Problems problems;
  const auto text = read_text_file(TACKFREE_ROOT "/tests/published/jfk_2013_10_08.csv", problems);
  if (!text) throw std::runtime_error(to_text(problems.front()));
  std::istringstream lines(*text);
  AirRows rows = hourly({}, {}, 0);
  for (std::string line; std::getline(lines, line);) {
    int day = 0;
    int hour = 0;
    double t = 0;
    double dew = 0;
    double humidity = 0;
    if (std::sscanf(line.c_str(), "%d,%d,%lf,%lf,%lf", &day, &hour, &t, &dew, &humidity) != 5)
      continue;
    const Instant at = instant("2013-10-01T00:00:00Z") + Minutes(((day - 1) * 24 + hour) * 60);
    rows.rows.push_back({.at = at,
                         .temperature = fahrenheit(t),
                         .dew_point = fahrenheit(dew),
                         .humidity = humidity_percent(humidity),
                         .line = 0});
  }
  return rows;
}

}  // namespace tackfree::testing
