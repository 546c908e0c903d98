#include "tackfree/air/air_nodes.hpp"

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant six = instant("2026-04-10T06:00Z");
const AirNode at_six{six, {celsius(4), pascals(600)}};
const AirNode at_seven{six + Minutes(60), {celsius(10), pascals(900)}};

}  // namespace

TEST_CASE("Between two nodes temperature and vapour pressure run straight, each on its own") {
  const AirState quarter = state_between(at_six, at_seven, six + Minutes(15));
  CHECK(quarter.temperature.in_celsius() == doctest::Approx(5.5).epsilon(1e-12));
  CHECK(quarter.vapour.in(pascals) == doctest::Approx(675).epsilon(1e-12));
  CHECK(share_of_way({at_six.at, at_seven.at}, six + Minutes(45)) == 0.75);
}

TEST_CASE("At a node the air is just that of the node, and so it is past either end") {
  for (const int minute : {-5, 0}) {
    CHECK(state_between(at_six, at_seven, six + Minutes(minute)).temperature == celsius(4));
    CHECK(state_between(at_six, at_seven, six + Minutes(minute)).vapour == pascals(600));
  }
  for (const int minute : {60, 65})
    CHECK(state_between(at_six, at_seven, six + Minutes(minute)).temperature == celsius(10));
}
