#include "tackfree/air/wood_moisture.hpp"

namespace tackfree {

/// Source: as in the header; W, K, K1 and K2 are quadratic in degrees Fahrenheit.
Fraction equilibrium_moisture(Temperature t, Humidity humidity) {
  const double f = t.in_fahrenheit();
  const double h = humidity.in(humidity_fraction);
  const double w = 330 + f * (0.452 + 0.00415 * f);
  const double k = 0.791 + f * (0.000463 - 0.000000844 * f);
  const double k1 = 6.34 + f * (0.000775 - 0.0000935 * f);
  const double k2 = 1.09 + f * (0.0284 - 0.0000904 * f);
  const double kh = k * h;
  return percent(
      1800 / w *
      (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh)));
}

}  // namespace tackfree
