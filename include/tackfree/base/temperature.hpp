// Temperature: a point on the scale, which is not a difference between two points.
#pragma once

#include "tackfree/base/units.hpp"

#include <compare>

namespace tackfree {

/// A temperature. Two of them have a difference, but no sum.
class Temperature {
 public:
  constexpr Temperature() = default;
  constexpr double in_kelvin() const { return celsius_ + 273.15; }
  constexpr double in_celsius() const { return celsius_; }
  constexpr double in_fahrenheit() const { return celsius_ * 9.0 / 5.0 + 32.0; }

  friend constexpr auto operator<=>(Temperature, Temperature) = default;
  friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
    return kelvins(a.celsius_ - b.celsius_);
  }
  friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) {
    return Temperature(a.celsius_ + d.in(kelvins));
  }
  friend constexpr Temperature operator-(Temperature a, TemperatureDifference d) { return a + -d; }
  friend constexpr Temperature celsius(double degrees) { return Temperature(degrees); }

 private:
  explicit constexpr Temperature(double degrees) : celsius_(degrees) {}
  double celsius_ = 0.0;
};

constexpr Temperature celsius(double degrees);
constexpr Temperature fahrenheit(double degrees) { return celsius((degrees - 32.0) * 5.0 / 9.0); }

}  // namespace tackfree
