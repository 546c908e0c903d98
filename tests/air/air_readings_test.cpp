#include "tackfree/air/air_readings.hpp"

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

const Instant noon = parse_instant("2027-04-10T12:00Z").value();

AirSeries read_with(const std::vector<AirReading>& readings) {
  Problems problems;
  return AirSeries::over(ConstantAir{celsius(10), humidity_percent(60)},
                         {noon - one_day, noon + one_day}, problems, readings)
      .value();
}

double celsius_then(const AirSeries& air, Instant at) {
  return air.at(at).temperature.in_celsius();
}

/// A room that follows outdoors, 10 C at all times, with a time constant of twelve hours.
AirSeries lagging_room(const std::vector<AirReading>& readings) {
  AirMix mix;
  mix.sources.push_back(
      {.name = "outdoors", .what = ConstantAir{celsius(10), humidity_percent(60)}});
  mix.indoors = Indoors{.time_constant = sourced(hours(12), Origin::measured),
                        .heating = std::nullopt,
                        .humidity_ceiling = std::nullopt};
  Problems problems;
  return AirSeries::over(mix, {noon - one_day, noon + 2 * one_day}, problems, readings).value();
}

}  // namespace

// A first-order lag forgets exponentially: 1/e of a difference is left after one time constant.
TEST_CASE("the difference of a reading fades with the room's own time constant") {
  const AirSeries air = lagging_room({{noon, celsius(2), humidity_percent(90)}});
  CHECK(celsius_then(air, noon) == Approx(2));
  CHECK(celsius_then(air, noon + 12 * one_hour) == Approx(10 - 8 / std::numbers::e).epsilon(1e-3));
  CHECK(celsius_then(air, noon + 24 * one_hour) ==
        Approx(10 - 8 / std::numbers::e / std::numbers::e).epsilon(1e-3));
  CHECK(celsius_then(air, noon - 12 * one_hour) == Approx(10 - 8 / std::numbers::e).epsilon(1e-3));
}

TEST_CASE("where no lag is known the difference of a reading fades in the usual six hours") {
  const AirSeries air = read_with({{noon, celsius(14), humidity_percent(80)}});
  CHECK(celsius_then(air, noon) == Approx(14));
  CHECK(relative_humidity(air.at(noon).temperature, air.at(noon).vapour).in(humidity_percent) ==
        Approx(80));
  CHECK(celsius_then(air, noon + 6 * one_hour) == Approx(10 + 4 / std::numbers::e).epsilon(1e-3));
  CHECK(celsius_then(air, noon - 6 * one_hour) == Approx(10 + 4 / std::numbers::e).epsilon(1e-3));
  CHECK(air.covers().begin == noon - one_day);
}

TEST_CASE("a difference fades smoothly, not only where the account has nodes") {
  const AirSeries air = read_with({{noon, celsius(14), {}}});
  for (int quarter = 0; quarter < 96; ++quarter)
    CHECK(celsius_then(air, noon + quarter * Minutes(15)) ==
          Approx(10 + 4 * std::exp(-quarter / 24.0)).epsilon(1e-3));
}

// Halfway between equal differences d of an Ornstein-Uhlenbeck process with time constant tau, h
// from each, d / cosh(h / tau) is expected. C. E. Rasmussen, C. K. I. Williams, Gaussian Processes
// for Machine Learning, 2006: sec. 2.2 with the exponential covariance of sec. 4.2.1 (from memory).
TEST_CASE("between two readings the difference sags as if it forgot both ways") {
  const AirSeries near = read_with({{noon, celsius(14), {}}, {noon + one_hour, celsius(8), {}}});
  CHECK(celsius_then(near, noon + Minutes(30)) == Approx(11).epsilon(1e-2));
  CHECK(celsius_then(near, noon + one_hour) == Approx(8));
  const AirSeries far =
      read_with({{noon - 10 * one_hour, celsius(14), {}}, {noon + 10 * one_hour, celsius(14), {}}});
  CHECK(celsius_then(far, noon) == Approx(10 + 4 / std::cosh(10.0 / 6)).epsilon(1e-3));
}

TEST_CASE("a reading from before the plan still counts, whatever the account of the air") {
  const Minutes ago = 25 * one_hour;
  CHECK(celsius_then(read_with({{noon - ago, celsius(20), {}}}), noon - one_day) ==
        Approx(10 + 10 * std::exp(-1.0 / 6)).epsilon(1e-3));
  CHECK(celsius_then(lagging_room({{noon - ago, celsius(20), {}}}), noon - one_day) ==
        Approx(10 + 10 * std::exp(-1.0 / 12)).epsilon(1e-3));
}

TEST_CASE(
    "a thermometer alone leaves the water in the air, but for what would be over saturation") {
  const Pressure before = read_with({}).at(noon).vapour;
  CHECK((read_with({{noon, celsius(14), {}}}).at(noon).vapour / before) == Approx(1.0));
  const AirState cold = read_with({{noon, celsius(-5), {}}}).at(noon);
  CHECK((cold.vapour / saturation_pressure(celsius(-5))) == Approx(1.0));
}

TEST_CASE("a later reading of the same minute counts") {
  CHECK(celsius_then(read_with({{noon, celsius(14), {}}, {noon, celsius(12), {}}}), noon) ==
        Approx(12));
}

TEST_CASE("a reading from before anything is known of the air says nothing") {
  AirRows rows;
  for (int hour = 0; hour <= 48; ++hour)
    rows.rows.push_back({noon + hour * one_hour, celsius(10), {}, humidity_percent(50), hour + 2});
  Problems problems;
  const AirSeries air =
      AirSeries::over(rows, {noon, noon + one_day}, problems, {{noon - one_hour, celsius(20), {}}})
          .value();
  CHECK(celsius_then(air, noon) == Approx(10));
}

TEST_CASE("rows and days are known from their first hour on, constant air always") {
  AirRows rows;
  rows.rows = {{noon, celsius(10), {}, humidity_percent(50), 2}};
  CHECK(known_from(rows) == noon);
  CHECK_FALSE(known_from(ConstantAir{}));
  CHECK(known_from(AirMix{"", {{"forecast", rows, 0}}, {}, {}}) == noon);
}
