#include "tackfree/air/drying_explained.hpp"

#include <cmath>

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant april_10 = instant("2026-04-10T00:00:00Z");
const Interval ten_april_days{april_10, april_10 + Minutes(10 * 1440)};

double product(const DryingExplanation& why) {
  return why.label.value.in(hours)*why.temperature.value * why.humidity.value * why.film.value *
         why.air_movement.value * why.held.value;
}

}  // namespace

TEST_CASE("Label hours and factors multiply out to the wait, in any air") {
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    const AirSeries air = series(random_rows(seed, april_10, 241), ten_april_days);
    for (const DryingLaw& law : {oxidative_law(), waterborne_law(), lacquer_law()}) {
      const Coating c = coating(law, {{Stage::touch, hours(2)}, {Stage::sand, hours(7)}}, 21);
      const Speed speed = metres_per_second(0.3);
      const DryingClock clock(c, air, speed);
      for (const Stage stage : {Stage::touch, Stage::sand}) {
        const Instant applied = april_10 + Minutes(600);
        const auto why = explained(c, stage, air, speed, clock, applied, 1.3);
        const auto reached = clock.reached(stage, applied, 1.3);
        REQUIRE(why.has_value() == reached.has_value());
        if (!why) continue;
        CHECK(why->ends == *reached);
        CHECK(product(*why) == doctest::Approx(why->wait().in(hours)).epsilon(1e-9));
        CHECK(why->air_movement.value ==
              doctest::Approx(1 / air_speed_factor(law.air_exponent.value, speed)));
      }
    }
  }
}

TEST_CASE("In constant air each factor is that of its formula") {
  const Coating c = coating(oxidative_law(), {{Stage::sand, hours(6)}});
  const AirSeries air = constant_air(18, 80, ten_april_days);
  const DryingClock clock(c, air, sheltered);
  const auto why = explained(c, Stage::sand, air, sheltered, clock, april_10, 1.25).value();
  // The worked example of the model: 18.458635 h, of which humidity 1/0.666667 and film 1.25^1.5.
  CHECK(why.humidity.value == doctest::Approx(1.5).epsilon(1e-5));
  CHECK(why.film.value == doctest::Approx(std::pow(1.25, 1.5)).epsilon(1e-9));
  CHECK(why.label.value.in(hours)*why.temperature.value * why.humidity.value * why.film.value ==
        doctest::Approx(18.458635).epsilon(1e-4));
  // Rounded up to the minute, no more.
  CHECK(why.held.value >= 1 - 1e-6);
  CHECK(why.held.value < 1 + 1 / (18.45 * 60));
}

TEST_CASE("What the label's floor adds stands in a factor of its own") {
  const Coating c = coating(oxidative_law(), {{Stage::sand, hours(12)}});
  const AirSeries hot = constant_air(35, 40, ten_april_days);
  const auto why =
      explained(c, Stage::sand, hot, sheltered, DryingClock(c, hot, sheltered), april_10);
  CHECK(why.value().wait().in(hours) == doctest::Approx(12));
  CHECK(why->held.value > 2);
  CHECK(product(*why) == doctest::Approx(12));
}

TEST_CASE("The share of the wait outside the label's rows is told") {
  Coating c = coating(oxidative_law(), {{Stage::sand, hours(6)}});
  c.label_points[index_of(Stage::sand)] = {{celsius(15), hours(10)}, {celsius(25), hours(5)}};
  const auto share = [&](double t) {
    const AirSeries air = constant_air(t, 50, ten_april_days);
    return explained(c, Stage::sand, air, sheltered, DryingClock(c, air, sheltered), april_10)
        .value()
        .outside_label;
  };
  CHECK(share(20) == 0.0);
  CHECK(share(12) == doctest::Approx(1));
}
