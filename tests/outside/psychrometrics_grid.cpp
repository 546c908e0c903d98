// Prints saturation pressure (Pa) and dew point (C) of the program over a grid of air states, as
// CSV, for tests/outside/psychrometrics.mjs to compare with another library.
#include "tackfree/air/psychrometrics.hpp"

#include <fmt/format.h>

int main() {
  using namespace tackfree;
  fmt::print("t,rh,pws,dew\n");
  for (int half_degrees = 1; half_degrees <= 90; ++half_degrees) {
    for (int half_percents = 10; half_percents <= 190; half_percents += 5) {
      const double t = 0.5 * half_degrees;
      const double rh = 0.5 * half_percents;
      fmt::print("{:.1f},{:.1f},{:.12g},{:.12g}\n", t, rh,
                 saturation_pressure(celsius(t)).in(pascals),
                 dew_point(vapour_pressure(celsius(t), humidity_percent(rh))).in_celsius());
    }
  }
}
