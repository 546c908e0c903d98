#include "tackfree/air/kept_limits.hpp"

#include "tackfree/air/psychrometrics.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("A limit itself is kept, in whatever unit it was written, and 0.01 beyond it is not") {
  for (double at = -20; at < 45; at += 0.37) {
    const Temperature limit = celsius(at);
    CHECK(is_warm_enough(fahrenheit(at * 9 / 5 + 32), limit));
    CHECK(is_cool_enough(fahrenheit(at * 9 / 5 + 32), limit));
    CHECK_FALSE(is_warm_enough(celsius(at - 0.01), limit));
    CHECK_FALSE(is_cool_enough(celsius(at + 0.01), limit));
  }
}

TEST_CASE("The margin over the dew point is kept when the two differ by just that") {
  for (double at = -10; at < 40; at += 0.37)
    for (const double margin : {2.0, 3.0, 5.4 / 1.8}) {
      const AirState air{celsius(at), saturation_pressure(celsius(at) - kelvins(margin))};
      CHECK(is_clear_of_dew(air, air.temperature, kelvins(margin)));
      // The same dew point, found from the vapour pressure.
      const AirState again{celsius(at), saturation_pressure(dew_point(air.vapour))};
      CHECK(is_clear_of_dew(again, again.temperature, kelvins(margin)));
      CHECK_FALSE(is_clear_of_dew(air, air.temperature - kelvins(0.01), kelvins(margin)));
    }
}

TEST_CASE("The humidity that is allowed is kept when the air has just that") {
  for (double most = 40; most < 99; most += 0.37) {
    const auto air = [&](double humid) {
      return AirState{celsius(17.3), vapour_pressure(celsius(17.3), humidity_percent(humid))};
    };
    CHECK(is_dry_enough(air(most), humidity_percent(most)));
    CHECK_FALSE(is_dry_enough(air(most + 0.01), humidity_percent(most)));
  }
}
