#include "tackfree/air/air_readings.hpp"

#include "tackfree/air/psychrometrics.hpp"

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

}  // namespace

TEST_CASE("at a reading the air is what was read, and half as far off three hours away") {
  const AirSeries air = read_with({{noon, celsius(14), humidity_percent(80)}});
  CHECK(celsius_then(air, noon) == Approx(14));
  CHECK(relative_humidity(air.at(noon).temperature, air.at(noon).vapour).in(humidity_percent) ==
        Approx(80));
  CHECK(celsius_then(air, noon + 3 * one_hour) == Approx(12));
  CHECK(celsius_then(air, noon - 3 * one_hour) == Approx(12));
  CHECK(celsius_then(air, noon + 7 * one_hour) == Approx(10));
  CHECK(air.covers().begin == noon - one_day);
}

TEST_CASE("between two readings the difference goes straight from one to the next") {
  const AirSeries air =
      read_with({{noon, celsius(14), {}}, {noon + 10 * one_hour, celsius(8), {}}});
  CHECK(celsius_then(air, noon + 5 * one_hour) == Approx(11));
  CHECK(celsius_then(air, noon + 10 * one_hour) == Approx(8));
}

TEST_CASE("readings far apart say nothing of the time between them") {
  const AirSeries air =
      read_with({{noon - 10 * one_hour, celsius(14), {}}, {noon + 10 * one_hour, celsius(14), {}}});
  CHECK(celsius_then(air, noon) == Approx(10));
}

TEST_CASE(
    "a thermometer alone leaves the water in the air, but for what would be over saturation") {
  const Pressure before = read_with({}).at(noon).vapour;
  CHECK((read_with({{noon, celsius(14), {}}}).at(noon).vapour / before) == Approx(1.0));
  const AirState cold = read_with({{noon, celsius(-5), {}}}).at(noon);
  CHECK((cold.vapour / saturation_pressure(celsius(-5))) == Approx(1.0));
}

TEST_CASE("a later reading of the same minute counts, and one outside the plan does not") {
  CHECK(celsius_then(read_with({{noon, celsius(14), {}}, {noon, celsius(12), {}}}), noon) ==
        Approx(12));
  CHECK(celsius_then(read_with({{noon - 25 * one_hour, celsius(20), {}}}), noon - one_day) ==
        Approx(10));
}

TEST_CASE("rows and days are known from their first hour on, constant air always") {
  AirRows rows;
  rows.rows = {{noon, celsius(10), {}, humidity_percent(50), 2}};
  CHECK(known_from(rows) == noon);
  CHECK_FALSE(known_from(ConstantAir{}));
  CHECK(known_from(AirMix{"", {{"forecast", rows, 0}}, {}, {}}) == noon);
}
