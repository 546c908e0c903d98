#include "tackfree/air/psychrometrics.hpp"

#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

namespace {

/// ln of the saturation pressure in Pa over liquid water; T in K.
/// Source: Hyland and Wexler 1983, as in ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 6.
double ln_saturation_pressure(double kelvin) {
  return -5.8002206e3 / kelvin + 1.3914993 +
         kelvin * (-4.8640239e-2 + kelvin * (4.1764768e-5 - kelvin * 1.4452093e-8)) +
         6.5459673 * logarithm(kelvin);
}

/// Its derivative, in 1/K.
double ln_saturation_pressure_slope(double kelvin) {
  return 5.8002206e3 / (kelvin * kelvin) - 4.8640239e-2 + 2.0 * 4.1764768e-5 * kelvin -
         3.0 * 1.4452093e-8 * kelvin * kelvin + 6.5459673 / kelvin;
}

/// A first guess of the dew point in C, within 0.1 K between -20 and 45 C.
/// Where Newton's method begins, which no result shows: the Magnus form of Alduchov and Eskridge
/// 1996, J. Appl. Meteor. 35:601, turned round.
double magnus_dew_point(double pascal) {
  const double g = logarithm(pascal / 610.94);
  return 243.04 * g / (17.625 - g);
}

}  // namespace

Pressure saturation_pressure(Temperature t) {
  return pascals(exponential(ln_saturation_pressure(t.in_kelvin())));
}

Pressure vapour_pressure(Temperature t, Humidity humidity) {
  return saturation_pressure(t) * humidity.in(humidity_fraction);
}

Humidity relative_humidity(Temperature t, Pressure vapour) {
  return humidity_fraction(std::min(1.0, vapour / saturation_pressure(t)));
}

Temperature dew_point(Pressure vapour) {
  constexpr double close_enough = 1e-9;  // K
  constexpr int most_steps = 20;         // two or three are needed between -50 and 100 C
  const double ln_vapour = logarithm(vapour.in(pascals));
  double kelvin = std::max(200.0, celsius(magnus_dew_point(vapour.in(pascals))).in_kelvin());
  // Newton on ln p, which is nearly straight in T.
  for (int i = 0; i < most_steps; ++i) {
    const double step =
        (ln_saturation_pressure(kelvin) - ln_vapour) / ln_saturation_pressure_slope(kelvin);
    kelvin -= step;
    if (std::abs(step) < close_enough) break;
  }
  return celsius(kelvin - celsius(0).in_kelvin());
}

}  // namespace tackfree
