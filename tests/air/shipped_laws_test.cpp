// The drying laws as they are shipped, worked apart from this program: a slip in the data shows
// here. That they are true of the world is for tests/published to say.
#include "tackfree/air/drying.hpp"

#include <vector>

#include "air/exact_drying.hpp"
#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

TEST_CASE("Each shipped law takes the hours that its figures make, at each depth of the film") {
  struct Row {
    const char* law;
    double touch, recoat, through, stops_below;
  };
  // Hours of a stage of 10 h on the label (23 C, 50 %), at 12 C, 70 %, 0.25 m/s and 1.4 times the
  // film, by the formulas of docs/formulas.md.
  const std::vector<Row> rows = {{"oxidative", 35.840090, 42.406566, 50.176126, 0},
                                 {"drying_oil", 42.580617, 50.382066, 59.612864, 0},
                                 {"hardwax_oil", 35.840090, 35.840090, 42.406566, 0},
                                 {"waterborne", 34.226052, 34.226052, 40.496810, 5},
                                 {"lacquer", 17.284861, 20.451724, 24.198806, -10},
                                 {"shellac", 17.835024, 21.102685, 24.969033, -10},
                                 {"two_component", 24.163278, 24.163278, 24.163278, 0}};
  for (const Row& row : rows) {
    CAPTURE(row.law);
    const DryingLaw& law = shipped_law(row.law);
    const Coating c = coating(
        law,
        {{Stage::touch, hours(10)}, {Stage::recoat, hours(10)}, {Stage::light_use, hours(10)}});
    const auto found = [&](Stage stage) {
      return drying_duration(c, stage, air_at(12, 70), metres_per_second(0.25), 1.4)
          .value()
          .in(hours);
    };
    CHECK(agrees(found(Stage::touch), row.touch));
    CHECK(agrees(found(Stage::recoat), row.recoat));
    CHECK(agrees(found(Stage::light_use), row.through));
    CHECK(drying_rate(law, air_at(row.stops_below - 0.1, 50), sheltered) == 0.0);
    CHECK(drying_rate(law, air_at(row.stops_below, 50), sheltered) > 0.0);
  }
}
