#include "tackfree/volume/coat_volume.hpp"

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

TEST_CASE("coating and thinner are the whole mix, in the stated proportion") {
  for (const double thinner : {0.0, 0.1, 0.5, 1.0}) {
    const Mixture mix = mixture(litres(2.2), fraction(thinner));
    CHECK((mix.coating + mix.thinner).in(litres) == Approx(2.2));
    CHECK(mix.thinner / mix.coating == Approx(thinner));
  }
}

TEST_CASE("the first coat drinks by wood and grain, the second by grain, later ones the same") {
  const FinishingData data = small_data();
  CHECK(grain_factor(data, oil_varnish(), Grain::face, 1) == Approx(1.25));
  CHECK(grain_factor(data, oil_varnish(), Grain::end, 1) == Approx(2.5));
  CHECK(grain_factor(data, oil_varnish(), Grain::face, 2) == Approx(1.0));
  CHECK(grain_factor(data, oil_varnish(), Grain::end, 2) == Approx(1.3));
  CHECK(grain_factor(data, oil_varnish(), Grain::plywood_edge, 2) == Approx(1.3));
  CHECK(grain_factor(data, oil_varnish(), Grain::end, 3) == Approx(1.0));
  CHECK(grain_factor(data, oil_varnish(), Grain::end, 9) == Approx(1.0));
}

// Arithmetic: 3 coats x 12 m2 / (12.857 m2/L x 0.9) = 3.111 L.
TEST_CASE("a loss of a tenth divides the spread, it does not add a tenth") {
  const Volume need =
      3 * mixed_need(square_metres(12), square_metres_per_litre(12.857), 1.0, percent(90));
  CHECK(need.in(litres) == Approx(3.111).epsilon(0.0005));
}

// Source: NIST SP 811, appendix B.6 and C: the US gallon is 231 cubic inches, 3.785411784 L.
TEST_CASE("a gallon is 3.785411784 litres, eight pints, four quarts, 128 fluid ounces") {
  CHECK(us_gallons(1).in(litres) == Approx(3.785411784).epsilon(1e-12));
  const double inch = inches(1).in(metres);
  CHECK(cubic_metres(231 * inch * inch * inch).in(us_gallons) == Approx(1.0).epsilon(1e-12));
  CHECK(us_pints(1).in(millilitres) == Approx(473.176473).epsilon(1e-12));
  CHECK(us_quarts(1).in(millilitres) == Approx(946.352946).epsilon(1e-12));
  CHECK(us_fluid_ounces(128).in(us_gallons) == Approx(1.0).epsilon(1e-12));
}
