#include "tackfree/air/recoat_window.hpp"

#include <algorithm>
#include <cstdint>
#include <vector>

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant coat_at = instant("2026-04-10T00:00:00Z");
const Interval four_days{coat_at, coat_at + Minutes(4 * 1440)};

Coating varnish(double within_h) {
  Coating c = coating(arrhenius_law(50, 0.1, 0), {{Stage::recoat, hours(8)}});
  c.recoat_unsanded_within = sourced(hours(within_h), Origin::label);
  return c;
}

/// The lowest temperature of the boards in the hour that ends at `end`, or since `begin`.
Temperature lowest_within_hour(const AirSeries& air, Instant begin, Instant end) {
  Temperature lowest = air.surface_at(end);
  for (Instant at = std::max(begin, end - one_hour); at < end; at += Minutes(5))
    lowest = std::min(lowest, air.surface_at(at));
  return lowest;
}

/// The highest temperature of the boards that lasted for an hour within `stretch`; that of a
/// shorter stretch is its lowest. Source as below.
Temperature warmest_hour(const AirSeries& air, Interval stretch) {
  const Instant first = std::min(stretch.begin + one_hour, stretch.end);
  Temperature warmest = lowest_within_hour(air, stretch.begin, first);
  for (Instant at = first; at <= stretch.end; at += Minutes(5))
    warmest = std::max(warmest, lowest_within_hour(air, stretch.begin, at));
  return warmest;
}

/// 20 C but for two hours at the top of a hump of `top` degrees, hours 10 to 12.
AirSeries hump(double top) {
  std::vector<double> t(97, 20.0);
  t[10] = t[11] = t[12] = top;
  return series(hourly(coat_at, t, 5), four_days);
}

}  // namespace

TEST_CASE("The warmest hour is what lasts an hour, not the peak") {
  // Source of the rule: UFGS 09971, highest surface temperature sustained for one hour or more.
  CHECK(warmest_hour(hump(30), four_days).in_celsius() == doctest::Approx(30));
  std::vector<double> t(97, 20.0);
  t[10] = 32;
  const AirSeries peak = series(hourly(coat_at, t, 5), four_days);
  // Up and down within two hours: an hour is spent above half of the way.
  CHECK(warmest_hour(peak, four_days).in_celsius() == doctest::Approx(26));
  CHECK(warmest_hour(peak, {coat_at, coat_at + Minutes(8 * 60)}).in_celsius() ==
        doctest::Approx(20));
}

TEST_CASE("The window ends by the warmest hour so far, and five minutes later it is past") {
  const Coating c = varnish(24);
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    const AirSeries air = series(random_rows(seed, coat_at, 97), four_days);
    for (Instant at = coat_at; at < coat_at + Minutes(1440); at += Minutes(205)) {
      const Instant until = recoat_unsanded_until(c, air, at).value();
      const auto fits = [&](Instant over) {
        return to_duration(over - at) <= *longest_unsanded(c, warmest_hour(air, {at, over}));
      };
      CAPTURE(iso_utc(at));
      CHECK(fits(until));
      CHECK_FALSE(fits(until + Minutes(5)));
    }
  }
}

TEST_CASE("Warmth shortens the window and cold does not lengthen it") {
  const Coating c = varnish(24);
  CHECK(longest_unsanded(c, celsius(23))->in(hours) == doctest::Approx(24));
  CHECK(longest_unsanded(c, celsius(12))->in(hours) == doctest::Approx(24));
  const double warm = longest_unsanded(c, celsius(33))->in(hours);
  CHECK(warm == doctest::Approx(24 / drying_rate(c.law, air_at(33, 50), metres_per_second(0.1))));
  CHECK(warm < 14);
  CHECK_FALSE(longest_unsanded(coating(arrhenius_law(50, 0.1, 0), {}), celsius(23)));
}

TEST_CASE("A warm hour on the way ends the window earlier for good") {
  const Coating c = varnish(24);
  CHECK(recoat_unsanded_until(c, hump(20), coat_at) == coat_at + Minutes(24 * 60));
  const Instant warm = recoat_unsanded_until(c, hump(33), coat_at).value();
  CHECK(to_duration(warm - coat_at) <= longest_unsanded(c, celsius(33)).value());
  CHECK(to_duration(warm + Minutes(5) - coat_at) > longest_unsanded(c, celsius(33)).value());
  CHECK_FALSE(recoat_unsanded_until(coating(lacquer_law(), {}), hump(20), coat_at));
}
