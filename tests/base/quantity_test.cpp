#include "tackfree/base/quantity.hpp"

#include "tackfree/base/temperature.hpp"
#include "tackfree/base/units.hpp"

#include <type_traits>

#include <doctest/doctest.h>

namespace tackfree {
namespace {

template <class A, class B>
concept can_add = requires(A a, B b) {
  a + b;
};

TEST_CASE("quantities of different kinds do not mix, and temperatures have no sum") {
  static_assert(can_add<Length, Length>);
  static_assert(!can_add<Length, Area>);
  static_assert(!can_add<Length, double>);
  static_assert(!can_add<Temperature, Temperature>);
  static_assert(can_add<Temperature, TemperatureDifference>);
  static_assert(!std::is_constructible_v<Length, double>);
  static_assert(std::is_same_v<decltype(metres(1) * metres(1)), Area>);
  static_assert(std::is_same_v<decltype(metres(2) / metres(1)), double>);
  CHECK((metres(1) + centimetres(50)).in(millimetres) == doctest::Approx(1500));
}

TEST_CASE("units have their exact definitions") {
  // NIST SP 811, appendix B: inch and foot are exact; the US gallon is 231 cubic inches.
  CHECK(inches(1).in(millimetres) == doctest::Approx(25.4).epsilon(1e-15));
  CHECK(feet(1).in(inches) == doctest::Approx(12).epsilon(1e-15));
  CHECK(yards(1).in(metres) == doctest::Approx(0.9144).epsilon(1e-15));
  CHECK(us_gallons(1).in(litres) == doctest::Approx(3.785411784).epsilon(1e-14));
  CHECK(us_gallons(1).in(us_quarts) == doctest::Approx(4).epsilon(1e-14));
  CHECK(us_pints(1).in(us_fluid_ounces) == doctest::Approx(16).epsilon(1e-14));
  CHECK(square_feet(1).in(square_metres) == doctest::Approx(0.09290304).epsilon(1e-14));
  // Derived from these two: 1 m2/L = 40.7458 ft2/gal.
  CHECK(square_metres_per_litre(1).in(square_feet_per_us_gallon) ==
        doctest::Approx(40.7458).epsilon(1e-6));
}

TEST_CASE("products and quotients carry their units") {
  CHECK((square_metres(12) / square_metres_per_litre(10)).in(millilitres) == doctest::Approx(1200));
  CHECK((square_metres(3) / square_metres_per_hour(6)).in(minutes) == doctest::Approx(30));
  CHECK((litres(2) * grams_per_litre(450)).in(grams) == doctest::Approx(900));
  CHECK((grams(450) / cubic_metres(90)).in(grams_per_cubic_metre) == doctest::Approx(5));
}

TEST_CASE("temperature scales agree at the fixed points") {
  CHECK(fahrenheit(32).in_celsius() == doctest::Approx(0));
  CHECK(fahrenheit(212).in_celsius() == doctest::Approx(100));
  CHECK(celsius(23).in_kelvin() == doctest::Approx(296.15));
  CHECK((celsius(20) - celsius(15)).in(fahrenheit_degrees) == doctest::Approx(9));
  CHECK(celsius(-40).in_fahrenheit() == doctest::Approx(-40));
}

}  // namespace
}  // namespace tackfree
