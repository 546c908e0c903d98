#include "tackfree/air/dried_share.hpp"

#include "tackfree/air/drying.hpp"

#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;
using doctest::Approx;

namespace {

const Instant start = instant("2026-03-01T00:00:00Z");
const Interval ten_days{start, start + 10 * one_day};

AirSeries windy_march() { return series(random_rows(7, start, 241), ten_days); }

Coating varnish() { return coating(oxidative_law(), {{Stage::sand, hours(12)}}, 23.0); }

}  // namespace

TEST_CASE("the share is 1 where the clock has the coat reach the stage, thick films too") {
  const Coating c = varnish();
  const AirSeries air = windy_march();
  const DryingClock clock(c, air, sheltered, true);
  for (const double film : {1.0, 1.4}) {
    const DryingCoat coat{&c, Stage::sand, film, start + 7 * one_hour};
    const Instant reached = clock.reached(Stage::sand, coat.applied, film).value();
    CHECK(*dried_share(coat, air, sheltered, reached) == Approx(1.0).epsilon(0.005));
    const auto back = share_reached(coat, air, sheltered, 1.0);
    REQUIRE(back);
    CHECK(*back - reached <= Minutes(3));
    CHECK(reached - *back <= Minutes(3));
  }
}

TEST_CASE("what the log has taught does not change the share, only what it is compared with") {
  Coating slow = varnish();
  slow.slowness = 1.5;
  const Coating plain = varnish();
  const AirSeries air = windy_march();
  const Instant at = start + 9 * one_hour;
  CHECK(*dried_share({&slow, Stage::sand, 1.0, start}, air, sheltered, at) ==
        *dried_share({&plain, Stage::sand, 1.0, start}, air, sheltered, at));
  const Instant slow_dry = DryingClock(slow, air, sheltered).reached(Stage::sand, start).value();
  CHECK(*dried_share({&plain, Stage::sand, 1.0, start}, air, sheltered, slow_dry) ==
        Approx(1.5).epsilon(0.01));
}

TEST_CASE("there is no share of a stage that the label lacks, and none before the coat is on") {
  const Coating c = varnish();
  const AirSeries air = windy_march();
  CHECK_FALSE(dried_share({&c, Stage::hardware, 1.0, start}, air, sheltered, start));
  CHECK(*dried_share({&c, Stage::sand, 1.0, start + one_hour}, air, sheltered, start) == 0.0);
  CHECK_FALSE(share_reached({&c, Stage::sand, 1.0, start}, air, sheltered, 1000));
}
