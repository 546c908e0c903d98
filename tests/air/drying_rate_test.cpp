// The worked examples here check that the program follows the project's own drying model; they are
// not evidence that the model is true of the world. The published table is.
#include "tackfree/air/drying_rate.hpp"

#include <cmath>
#include <vector>

#include "air/exact_drying.hpp"
#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

struct Point {
  double t, after;
};

Coating with_rows(const DryingLaw& law, const std::vector<Point>& points) {
  Coating c = coating(law, {{Stage::recoat, hours(points.front().after)}});
  for (const Point& p : points)
    c.label_points[index_of(Stage::recoat)].push_back({celsius(p.t), hours(p.after)});
  return c;
}

double hours_at(const Coating& c, double t, double humidity) {
  return drying_duration(c, Stage::recoat, air_at(t, humidity), sheltered).value().in(hours);
}

}  // namespace

TEST_CASE("Moisture cure follows warmth and the water in the air, within its limits") {
  const Coating c = coating(moisture_law(), {{Stage::recoat, hours(8)}}, 25);
  CHECK(agrees(hours_at(c, 15, 40), 21.375314));
  CHECK(agrees(hours_at(c, 15, 80), 10.687657));
  CHECK(agrees(hours_at(c, 25, 20), 20.000000));
  // Very dry air leaves a tenth of the reference speed, very damp air at most twice.
  const double at_23 = hours_at(c, 23, 1) / hours_at(c, 23, 50);
  CHECK(at_23 == doctest::Approx(10));
  CHECK(hours_at(c, 40, 90) == doctest::Approx(hours_at(c, 40, 99)));
}

TEST_CASE("Rows of a label hold at their temperatures and run straight in ln t over 1/T between") {
  const Coating pu =
      with_rows(arrhenius_law(50, 0.10, 0), {{18.5, 8}, {24.5, 6}, {30, 4}, {35.5, 3}});
  for (const Point& p : std::vector<Point>{{18.5, 8}, {24.5, 6}, {30, 4}, {35.5, 3}})
    CHECK(hours_at(pu, p.t, 50) == doctest::Approx(p.after).epsilon(1e-9));
  CHECK(agrees(hours_at(pu, 21, 50), 7.086189));
  CHECK(agrees(hours_at(pu, 27, 50), 4.980922));
  CHECK(agrees(hours_at(pu, 33, 50), 3.414720));
  // Outside the rows by the law of the class.
  CHECK(agrees(hours_at(pu, 12, 50), 12.800175));
  CHECK(agrees(hours_at(pu, 40, 50), 2.267393));
  const StageRate rate(pu, Stage::recoat);
  CHECK(rate.extrapolates(celsius(18)));
  CHECK_FALSE(rate.extrapolates(celsius(18.5)));
  CHECK_FALSE(rate.extrapolates(celsius(35.5)));
  CHECK(rate.extrapolates(celsius(36)));
}

TEST_CASE("Rows of a waterborne label still feel the humidity, and go on by vapour pressure") {
  const Coating c = with_rows(waterborne_law(), {{10, 4}, {20, 2}, {30, 1}});
  CHECK(agrees(hours_at(c, 15, 50), 2.811469));
  CHECK(agrees(hours_at(c, 15, 70), 4.685781));
  CHECK(agrees(hours_at(c, 25, 50), 1.406018));
  CHECK(agrees(hours_at(c, 8, 50), 4.578482));
  CHECK_FALSE(drying_duration(c, Stage::recoat, air_at(4, 50), sheltered));
}

TEST_CASE("A law may be given by its Q10 in place of an activation energy") {
  DryingLaw law = arrhenius_law(0, 0.15, 0);
  law.q10 = sourced(2.0, Origin::assumed);
  const Coating c = coating(law, {{Stage::recoat, hours(6)}});
  CHECK(agrees(hours_at(c, 12, 50), 12.861282));
  CHECK(agrees(hours_at(c, 33, 50), 3.0));
}

TEST_CASE("Columns of a published recoat table are predicted by the others") {
  // Source: UFGS 09971, polyurethane over polyurethane, least hours for surfaces of 60-70, 71-80,
  // 81-90, 91-100, 101-110 and 111-120 F; here at the middles of the ranges. The table has whole
  // hours for ranges of 5 K, in which the time changes by a quarter: a fifth is asked.
  const Coating ends = with_rows(arrhenius_law(50, 0.10, 0), {{18.5, 8}, {30, 4}, {41, 2}});
  CHECK(hours_at(ends, 24.5, 50) == doctest::Approx(6).epsilon(0.2));
  CHECK(hours_at(ends, 35.5, 50) == doctest::Approx(3).epsilon(0.2));
  const Coating cool =
      with_rows(arrhenius_law(50, 0.10, 0), {{18.5, 8}, {24.5, 6}, {30, 4}, {35.5, 3}});
  CHECK(hours_at(cool, 41, 50) == doctest::Approx(2).epsilon(0.2));
  // The last column, 1 h, falls faster than the class law: warm ends are not to be trusted.
  CHECK(hours_at(cool, 46.5, 50) > 1.3);
  const Coating warm = with_rows(arrhenius_law(50, 0.10, 0), {{24.5, 6}, {30, 4}, {35.5, 3}});
  CHECK(hours_at(warm, 18.5, 50) == doctest::Approx(8).epsilon(0.2));
}

TEST_CASE("Temperature and humidity factors are 1 under the label's conditions and multiply out") {
  for (const DryingLaw& law : {oxidative_law(), waterborne_law(), moisture_law(), lacquer_law()}) {
    const Coating c = coating(law, {{Stage::recoat, hours(6)}}, 21);
    const StageRate rate(c, Stage::recoat);
    const DryingFactors at_label = rate.factors(air_at(21, 50));
    CHECK(at_label.temperature == doctest::Approx(1).epsilon(1e-12));
    CHECK(at_label.humidity == doctest::Approx(1).epsilon(1e-12));
    for (double t = -5; t <= 40; t += 3)
      for (double rh = 5; rh <= 100; rh += 19) {
        const double whole = drying_rate(law, air_at(t, rh), sheltered) /
                             drying_rate(law, air_at(21, 50), sheltered);
        CHECK(rate.relative(air_at(t, rh)) == doctest::Approx(whole).epsilon(1e-9));
      }
  }
}

TEST_CASE("Warmer air never dries slower at the same vapour pressure deficit") {
  for (const DryingLaw& law : {oxidative_law(), waterborne_law(), lacquer_law()})
    for (double deficit = 100; deficit < 2000; deficit += 300) {
      double before = 0;
      for (double t = -5; t <= 40; t += 0.5) {
        const Pressure full = saturation_pressure(celsius(t));
        if (full < pascals(deficit)) continue;
        const double rate = drying_rate(law, {celsius(t), full - pascals(deficit)}, sheltered);
        // Under a deficit that stays, humidity rises with warmth; warmth must outdo it.
        CHECK(rate >= before * (1 - 1e-9));
        before = rate;
      }
    }
}
