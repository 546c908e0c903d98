#include "tackfree/operations/pots.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a mixed pot lives half as long for every 10 K over the label's air, never longer") {
  Coating coating;
  CHECK_FALSE(pot_life_in(coating, celsius(23)));
  coating.pot_life = sourced(hours(4), Origin::label);
  coating.label_temperature = celsius(23);
  const auto hours_in = [&](double at) { return pot_life_in(coating, celsius(at))->in(hours); };
  CHECK(hours_in(23) == doctest::Approx(4));
  CHECK(hours_in(33) == doctest::Approx(2));
  CHECK(hours_in(28) == doctest::Approx(4 / 1.41421));
  CHECK(hours_in(10) == doctest::Approx(4));
}

TEST_CASE("pots are counted for the warmest air in which the class may be put on") {
  const Job job = testing::sample_job("two_component_polyurethane");
  const Coating& coating = job.coatings[0];
  const auto mixed = [&](std::optional<Temperature> warmest) {
    Operation coat;
    coat.work = minutes(150);
    add_pots(coat, coating, minutes(5), warmest);
    return coat;
  };
  CHECK(mixed({}).pots == 1);  // a pot is good for 3 h at 23 C
  CHECK(mixed(celsius(10)).pots == 1);
  // At 33 C it would be 90 min; over 30 C nothing is put on, so 110.8 min of 30 C count.
  const Operation hot = mixed(celsius(33));
  CHECK(hot.pot_life.in(minutes) == doctest::Approx(110.8).epsilon(0.001));
  CHECK(hot.pots == 2);
  CHECK(hot.work.in(minutes) == doctest::Approx(160));
}
