#include "tackfree/air/daily_profile.hpp"

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

TEST_CASE("Typical months hold on the 15th, run straight between, and stop at a missing one") {
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
  CHECK(typical_days(months, {span.begin, instant("2026-05-20T12:00:00Z")}).days.size() == 52);
}
