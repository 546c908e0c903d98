#include "tackfree/air/daily_profile.hpp"

#include <cmath>
#include <vector>

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

AirDays days_of(int count) {
  AirDays result;
  for (int i = 0; i < count; ++i)
    result.days.push_back({instant("2026-04-10T00:00:00Z") + Minutes(1440L * i),
                           {.low = celsius(10), .high = celsius(22), .dew_point = celsius(9)}});
  return result;
}

}  // namespace

TEST_CASE("The hours of a day lie between its low and high as ASHRAE spreads them") {
  // Source: ASHRAE Handbook Fundamentals 2017, ch. 14, table 6.
  const auto at = [](int hour) {
    return temperature_at_hour(celsius(10), celsius(22), hour).in_celsius();
  };
  CHECK(at(5) == doctest::Approx(10).epsilon(1e-12));
  CHECK(at(8) == doctest::Approx(13.12).epsilon(1e-12));
  CHECK(at(12) == doctest::Approx(20.44).epsilon(1e-12));
  CHECK(at(14) == doctest::Approx(22).epsilon(1e-12));
  CHECK(at(15) == doctest::Approx(22).epsilon(1e-12));
  CHECK(at(18) == doctest::Approx(19.12).epsilon(1e-12));
  CHECK(at(24) == doctest::Approx(12.16).epsilon(1e-12));
  CHECK(mean_temperature(celsius(10), celsius(22)).in_celsius() ==
        doctest::Approx(15.565).epsilon(1e-9));
}

TEST_CASE("Each hour has its fraction of the daily range") {
  // Source: ASHRAE Handbook Fundamentals 2017, ch. 14, table 6, hours 1 to 24.
  const std::vector<double> below_high = {0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74,
                                          0.55, 0.38, 0.23, 0.13, 0.05, 0.00, 0.00, 0.06,
                                          0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75, 0.82};
  for (std::size_t i = 0; i < below_high.size(); ++i) {
    const Temperature t = temperature_at_hour(celsius(0), celsius(100), static_cast<int>(i) + 1);
    CHECK(t.in_celsius() == doctest::Approx(100 - 100 * below_high[i]).epsilon(1e-12));
  }
}

TEST_CASE("The day of ASHRAE's fractions lies within 3 K in 20 of two other published curves") {
  // Source: Parton and Logan 1981, Agric. Meteorol. 23:205, air at 150 cm, sunrise at 6 and sunset
  // at 18; and the curve of Campbell and Norman: 10 to 30 C, both worked apart from this program.
  // Tolerance: neither says when the day is warmest as the other does, and the air warms by 3 K an
  // hour at nine: an hour's difference.
  struct Row {
    int hour;
    double t;
  };
  const std::vector<Row> parton_and_logan = {{24, 14.3368}, {3, 12.5021},  {6, 10.6793},
                                             {9, 21.8396},  {12, 28.8701}, {15, 29.3185},
                                             {18, 23.0284}, {21, 17.5167}};
  const std::vector<Row> campbell_and_norman = {
      {24, 13.3167}, {5, 10.6022}, {11, 25.0896}, {14, 29.9465}, {18, 22.7955}};
  for (const auto& curve : {parton_and_logan, campbell_and_norman})
    for (const Row& r : curve) {
      CAPTURE(r.hour);
      const double found = temperature_at_hour(celsius(10), celsius(30), r.hour).in_celsius();
      CHECK(std::abs(found - r.t) < 3);
    }
}

TEST_CASE("Days give a node an hour with the vapour pressure of their dew point") {
  const auto nodes = daily_nodes(days_of(2));
  REQUIRE(nodes.size() == 49);
  CHECK(nodes.front().at == instant("2026-04-10T00:00:00Z"));
  CHECK(nodes[5].state.temperature.in_celsius() == doctest::Approx(10));
  CHECK(nodes[29].at == instant("2026-04-11T05:00:00Z"));
  for (const auto& node : nodes)
    CHECK(node.state.vapour / saturation_pressure(celsius(9)) == doctest::Approx(1));
}

TEST_CASE("A typical humidity holds at the mean temperature, and no hour is over saturation") {
  AirDays given = days_of(1);
  given.days[0].range.dew_point.reset();
  given.days[0].range.humidity = humidity_percent(85);
  const auto nodes = daily_nodes(given);
  const Pressure vapour = saturation_pressure(celsius(15.565)) * 0.85;
  CHECK(nodes[14].state.vapour / vapour == doctest::Approx(1));
  CHECK(relative_humidity(nodes[5].state.temperature, nodes[5].state.vapour) ==
        humidity_percent(100));
  CHECK(nodes[5].state.vapour < vapour);
}

TEST_CASE("Typical months hold on the 15th, run straight between, and serve beside them") {
  AirMonths months;
  months.standard_offset = Minutes(-300);
  months.months[2] = DayRange{.low = celsius(0), .high = celsius(10), .dew_point = celsius(-2)};
  months.months[3] = DayRange{.low = celsius(6), .high = celsius(16), .dew_point = celsius(4)};
  const Interval span{instant("2026-03-10T12:00:00Z"), instant("2026-04-20T12:00:00Z")};
  const AirDays found = typical_days(months, span);
  REQUIRE(found.days.size() == 42);
  CHECK(found.days[0].begins == instant("2026-03-10T05:00:00Z"));
  CHECK(found.days[0].range.low.in_celsius() == doctest::Approx(0));  // no February beside it
  CHECK(found.days[5].range.high.in_celsius() == doctest::Approx(10));
  CHECK(found.days[20].range.high.in_celsius() == doctest::Approx(10 + 6 * 15.0 / 31));
  CHECK(found.days[23].range.high.in_celsius() == doctest::Approx(10 + 6 * 18.0 / 31));
  CHECK(found.days[36].range.low.in_celsius() == doctest::Approx(6));
  const AirDays into_may = typical_days(months, {span.begin, instant("2026-05-20T12:00:00Z")});
  CHECK(into_may.days.back().begins == instant("2026-05-20T05:00:00Z"));
  CHECK(into_may.days.back().range.low.in_celsius() == doctest::Approx(6));
}

TEST_CASE("The nearest month serves for one that is missing, the earlier of two") {
  AirMonths months;
  for (const std::size_t given : {0U, 3U, 5U}) months.months[given] = DayRange{};
  CHECK(month_serving(months, 4) == 4U);
  CHECK(month_serving(months, 5) == 4U);
  CHECK(month_serving(months, 12) == 1U);
  CHECK(month_serving(months, 9) == 6U);
  CHECK(month_serving(months, 10) == 1U);
  CHECK_FALSE(month_serving(AirMonths(), 5));
}
