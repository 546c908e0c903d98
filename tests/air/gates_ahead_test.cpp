#include "tackfree/air/gates_ahead.hpp"

#include <vector>

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

const Instant first_row = instant("2026-04-10T06:00:00Z");
constexpr Minutes grid{5};

/// Put on at 10 to 30 C and up to 80 % RH, 3 K above the dew point, then not under 5 C.
CoatingLimits some_limits() {
  CoatingLimits limits;
  limits.put_on_min.value = celsius(10);
  limits.put_on_max.value = celsius(30);
  limits.humidity_max.value = humidity_percent(80);
  limits.hold_min.value = celsius(5);
  limits.dew_point_margin.value = kelvins(3);
  return limits;
}

/// Two days by the hour at 15 C with a dew point of 5 C, but for one hour.
AirSeries mild_but_for(std::size_t hour, double t) {
  std::vector<double> temperatures(49, 15);
  temperatures.at(hour) = t;
  const AirRows rows = hourly(first_row, temperatures, 5);
  return series(rows, {rows.rows.front().at, rows.rows.back().at});
}

DryingClock clock_over(const AirSeries& air) {
  return {coating(lacquer_law(), {{Stage::touch, hours(1)}}), air, metres_per_second(0.10)};
}

}  // namespace

TEST_CASE("a begin breaks what a cold hour breaks while it is put on, wet or held") {
  CoatingLimits limits = some_limits();
  limits.hold_put_on_min = sourced(hours(10), Origin::assumed);
  const AirSeries air = mild_but_for(20, 2);
  const DryingClock clock = clock_over(air);
  GatesAhead ahead(limits, air, clock, first_row, Minutes(20), grid);
  const auto failing = [&](int hour) { return ahead.failing(hour * 12); };
  CHECK(failing(5).empty());
  CHECK(failing(12) == std::vector{Gate::cold_within_hold});
  CHECK(failing(19) == std::vector{Gate::dew, Gate::cold_before_dry, Gate::cold_within_hold});
  CHECK(failing(20) == std::vector{Gate::too_cold, Gate::too_humid, Gate::dew,
                                   Gate::cold_before_dry, Gate::cold_within_hold});
  CHECK(failing(22).empty());
}

TEST_CASE("in warm and in damp air what is wrong is named, and the end of the series forbids") {
  const CoatingLimits limits = some_limits();
  const AirSeries hot = mild_but_for(20, 33);
  const DryingClock clock = clock_over(hot);
  GatesAhead ahead(limits, hot, clock, first_row, Minutes(20), grid);
  CHECK(ahead.failing(20 * 12) == std::vector{Gate::too_warm});
  CHECK(ahead.failing(48 * 12) == std::vector{Gate::cold_before_dry});
  const AirSeries damp = mild_but_for(20, 7.5);
  const DryingClock slow = clock_over(damp);
  CHECK(GatesAhead(limits, damp, slow, first_row, Minutes(20), grid).failing(20 * 12) ==
        std::vector{Gate::too_cold, Gate::too_humid, Gate::dew});
}

TEST_CASE("a begin breaks the same, whichever begins were asked about before it") {
  const CoatingLimits limits = some_limits();
  const AirSeries air = mild_but_for(20, 2);
  const DryingClock clock = clock_over(air);
  GatesAhead ahead(limits, air, clock, first_row, Minutes(22), grid);
  for (int start = 12 * 48; start >= 0; start -= 7)
    CHECK(ahead.failing(start) ==
          GatesAhead(limits, air, clock, first_row + start * grid, Minutes(22), grid).failing(0));
}

}  // namespace tackfree
