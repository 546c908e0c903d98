// What must hold of the clock whatever the air does.
#include "tackfree/air/drying.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "air/exact_drying.hpp"
#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant march_1 = instant("2026-03-01T00:00:00Z");
const Interval ten_march_days{march_1, march_1 + Minutes(10 * 1440)};
constexpr std::array all_stages = {Stage::dust_free, Stage::touch, Stage::handle,
                                   Stage::recoat,    Stage::sand,  Stage::light_use,
                                   Stage::hardware,  Stage::stack, Stage::full_cure};

/// A full label; handle and light use fall together, and stack comes before hardware.
Label full_label() {
  return {{Stage::dust_free, hours(2)}, {Stage::touch, hours(5)},  {Stage::handle, hours(8)},
          {Stage::recoat, hours(8)},    {Stage::sand, hours(12)},  {Stage::light_use, hours(8)},
          {Stage::hardware, hours(30)}, {Stage::stack, hours(24)}, {Stage::full_cure, hours(48)}};
}

std::array<DryingLaw, 3> three_laws() { return {oxidative_law(), waterborne_law(), lacquer_law()}; }

AirSeries random_air(std::uint64_t seed) {
  return series(random_rows(seed, march_1, 241), ten_march_days);
}

}  // namespace

TEST_CASE("Under label conditions each stage takes just the label's hours, to the minute") {
  for (const DryingLaw& law : three_laws()) {
    for (double label_c : {21.0, 23.0, 25.0}) {
      const Coating c = coating(law, full_label(), label_c);
      const DryingClock clock(c, constant_air(label_c, 50, ten_march_days), sheltered, true);
      for (const auto& [stage, after] : full_label()) {
        const Instant applied = march_1 + Minutes(617);
        CHECK(clock.reached(stage, applied).value() == applied + whole_minutes_up(after));
      }
    }
  }
}

TEST_CASE("In constant air clock and formula agree") {
  for (const DryingLaw& law : three_laws()) {
    const Coating c = coating(law, {{Stage::recoat, hours(6)}});
    const Speed breeze = metres_per_second(0.3);
    const AirSeries air = constant_air(14, 65, ten_march_days);
    const DryingClock clock(c, air, breeze);
    const auto formula = drying_duration(c, Stage::recoat, air_at(14, 65), breeze, 1.3).value();
    const auto by_sums = exact_duration(c, Stage::recoat, air, breeze, march_1, 1.3).value();
    // Tolerance: 1e-6 min; the fixed point rounds each minute to 2.3e-10.
    CHECK(std::abs((by_sums - formula).in(minutes)) < 1e-6);
    CHECK(clock.reached(Stage::recoat, march_1, 1.3).value() ==
          march_1 + whole_minutes_up(formula));
  }
}

TEST_CASE("A later application never reaches a stage earlier") {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    const AirSeries air = random_air(seed);
    for (const DryingLaw& law : three_laws()) {
      const DryingClock clock(coating(law, full_label()), air, sheltered);
      for (const Stage stage : all_stages) {
        Instant before = march_1;
        for (Instant at = march_1; at < ten_march_days.end; at += Minutes(17)) {
          const Instant done = clock.reached(stage, at, 1.2).value_or(Instant::max());
          REQUIRE(done >= before);
          REQUIRE(done >= at);
          before = done;
        }
      }
    }
  }
}

TEST_CASE("A stage is never reached before one with a shorter label time") {
  const Label label = full_label();
  int compared = 0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    const AirSeries air = random_air(seed);
    for (const double film_ratio : {0.4, 1.0, 2.5}) {
      const DryingClock clock(coating(oxidative_law(), label), air, sheltered, seed % 2 == 0);
      for (Instant at = march_1; at < march_1 + Minutes(3 * 1440); at += Minutes(311)) {
        for (const auto& [longer, long_after] : label) {
          const auto long_done = clock.reached(longer, at, film_ratio);
          for (const auto& [shorter, short_after] : label) {
            if (short_after >= long_after || !long_done) continue;
            REQUIRE(clock.reached(shorter, at, film_ratio).value() <= *long_done);
            ++compared;
          }
        }
      }
    }
  }
  CHECK(compared > 1000);
}

TEST_CASE("A thin film does not make touch-dry later than recoat") {
  // Touch-dry goes with the thickness, recoat with its power 1.5: at 0.25 they would change places.
  const Coating c = coating(oxidative_law(), {{Stage::touch, hours(5)}, {Stage::recoat, hours(8)}});
  const DryingClock clock(c, constant_air(23, 50, ten_march_days), sheltered, true);
  CHECK(clock.reached(Stage::touch, march_1, 0.25).value() == march_1 + Minutes(75));
  CHECK(clock.reached(Stage::recoat, march_1, 0.25).value() == march_1 + Minutes(75));
}

TEST_CASE("Rows added on the straight line, or a later start of the series, change nothing") {
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const AirSeries air = random_air(seed);
    // The same air by half hours, with vapour pressures straight between as well.
    AirRows split = hourly(march_1, {}, 0);
    for (Instant at = march_1; at <= ten_march_days.end; at += Minutes(30)) {
      const AirState state = air.at(at);
      split.rows.push_back(
          row(at, state.temperature.in_celsius(), dew_point(state.vapour).in_celsius()));
    }
    const Coating c = coating(oxidative_law(), full_label());
    const DryingClock whole(c, air, sheltered);
    const DryingClock halves(c, series(split, ten_march_days), sheltered);
    const Instant day_2 = march_1 + Minutes(2 * 1440 + 20);
    const DryingClock later(c, series(random_rows(seed, march_1, 241), {day_2, ten_march_days.end}),
                            sheltered);
    for (Instant at = day_2; at < day_2 + Minutes(1440); at += Minutes(97)) {
      CHECK(whole.reached(Stage::sand, at) == halves.reached(Stage::sand, at));
      CHECK(whole.reached(Stage::sand, at) == later.reached(Stage::sand, at));
    }
  }
}

TEST_CASE("Drying in two stretches takes as long as drying in one") {
  // 3 h of label time, then from there the other 5 h, against 8 h at once.
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const AirSeries air = random_air(seed);
    const auto clock_of = [&](double label_hours) {
      return DryingClock(coating(lacquer_law(), {{Stage::touch, hours(label_hours)}}), air,
                         sheltered);
    };
    const Instant middle = clock_of(3).reached(Stage::touch, march_1).value();
    const Instant in_two = clock_of(5).reached(Stage::touch, middle).value();
    const Instant in_one = clock_of(8).reached(Stage::touch, march_1).value();
    // The first stretch is rounded up, by less than a minute; at 9 C that is under two at the end.
    CHECK(in_two >= in_one);
    CHECK(in_two <= in_one + Minutes(3));
  }
}

TEST_CASE(
    "Heat does not shorten handle, recoat and sand below the label, unless the person says so") {
  const Coating c = coating(oxidative_law(), full_label());
  const AirSeries hot = constant_air(35, 40, ten_march_days);
  const DryingClock kept(c, hot, metres_per_second(0.5));
  const DryingClock freed(c, hot, metres_per_second(0.5), true);
  for (const auto& [stage, after] : full_label()) {
    const std::size_t index = index_of(stage);
    CAPTURE(index);
    const Instant by_label = march_1 + whole_minutes_up(after);
    const bool floor = stage == Stage::handle || stage == Stage::recoat || stage == Stage::sand;
    if (floor) CHECK(kept.reached(stage, march_1).value() == by_label);
    CHECK(freed.reached(stage, march_1).value() < by_label);
  }
  CHECK(kept.reached(Stage::touch, march_1).value() < march_1 + Minutes(5 * 60));
  const auto by_sums = exact_duration(c, Stage::sand, hot, metres_per_second(0.5), march_1);
  CHECK(by_sums.value() < hours(12));
}

TEST_CASE("The floor is the label's hours even for a thin film") {
  const Coating c = coating(oxidative_law(), {{Stage::sand, hours(12)}});
  const DryingClock clock(c, constant_air(23, 50, ten_march_days), sheltered);
  CHECK(clock.reached(Stage::sand, march_1, 0.5).value() == march_1 + Minutes(12 * 60));
}

TEST_CASE("In air that stays too cold a stage is never reached") {
  const Coating c = coating(waterborne_law(), full_label());
  const DryingClock clock(c, constant_air(4, 50, ten_march_days), sheltered);
  CHECK_FALSE(clock.reached(Stage::dust_free, march_1));
}

TEST_CASE("A coat that dries after the series ends is never dry") {
  const Coating c = coating(oxidative_law(), {{Stage::sand, hours(12)}});
  const DryingClock clock(c, constant_air(23, 50, ten_march_days), sheltered);
  const Instant last_chance = ten_march_days.end - Minutes(12 * 60);
  CHECK(clock.reached(Stage::sand, last_chance).value() == ten_march_days.end);
  CHECK_FALSE(clock.reached(Stage::sand, last_chance + Minutes(1)));
  CHECK_FALSE(clock.reached(Stage::sand, ten_march_days.end + Minutes(1)));
}

TEST_CASE("A floor past the end of the series is never reached either") {
  const Coating c = coating(oxidative_law(), {{Stage::sand, hours(12)}});
  const DryingClock clock(c, constant_air(35, 40, ten_march_days), sheltered);
  CHECK_FALSE(clock.reached(Stage::sand, ten_march_days.end - Minutes(12 * 60 - 1)));
}

TEST_CASE(
    "A stage that the label does not name, or a label under the stopping point, has no time") {
  const AirSeries air = constant_air(23, 50, ten_march_days);
  const DryingClock clock(coating(oxidative_law(), {{Stage::touch, hours(5)}}), air, sheltered);
  CHECK_FALSE(clock.reached(Stage::sand, march_1));
  const Coating cold_label = coating(waterborne_law(), {{Stage::touch, hours(1)}}, 4);
  CHECK_FALSE(DryingClock(cold_label, air, sheltered).reached(Stage::touch, march_1));
}

TEST_CASE("A coat from before the series dries from its beginning") {
  const DryingClock clock(coating(oxidative_law(), {{Stage::touch, hours(5)}}),
                          constant_air(23, 50, ten_march_days), sheltered);
  CHECK(clock.reached(Stage::touch, march_1 - Minutes(600)).value() == march_1 + Minutes(300));
}

TEST_CASE("On a straight rise of temperature the clock finds the closed solution") {
  // T = 10 + 2 t, Q10 = 2, label 6 h: X = 10 / (2 ln 2) x 2^-1.3 x (2^(0.2 t) - 1) / 6 = 1.
  DryingLaw law = arrhenius_law(0, 0.15, 0);
  law.q10 = sourced(2.0, Origin::assumed);
  std::vector<double> rising;
  for (int hour = 0; hour <= 240; ++hour) rising.push_back(std::min(10.0 + 2 * hour, 40.0));
  const Coating c = coating(law, {{Stage::recoat, hours(6)}});
  const AirSeries air = series(hourly(march_1, rising, 0), ten_march_days);
  const double found = exact_duration(c, Stage::recoat, air, sheltered, march_1).value().in(hours);
  CHECK(DryingClock(c, air, sheltered).reached(Stage::recoat, march_1).value() ==
        march_1 + Minutes(483));
  // Straight within five minutes where the rate grows by 14 % an hour: 5 x 5 / 8 x 0.14 / 60 min,
  // and as much for the trapezoid rule before.
  CHECK(std::abs(found - 8.039490) * 60 < 0.02);
}

TEST_CASE("Stages with rows on the label have clocks of their own and keep their order") {
  Coating c = coating(oxidative_law(), full_label());
  // The label slows touch-dry down far more in the cold than the class law does.
  c.label_points[index_of(Stage::touch)] = {{celsius(5), hours(60)}, {celsius(23), hours(5)}};
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    const DryingClock clock(c, random_air(seed), sheltered);
    for (Instant at = march_1; at < march_1 + Minutes(3 * 1440); at += Minutes(53)) {
      const auto touch = clock.reached(Stage::touch, at);
      const auto handle = clock.reached(Stage::handle, at);
      if (handle) REQUIRE(touch);
      if (handle) CHECK(*touch <= *handle);
      const auto later = clock.reached(Stage::touch, at + Minutes(20));
      if (touch && later) CHECK(*touch <= *later);
    }
  }
  const DryingClock cold(c, constant_air(5, 50, ten_march_days), sheltered);
  CHECK(cold.reached(Stage::touch, march_1).value() == march_1 + Minutes(60 * 60));
}

TEST_CASE("The label's shortest row is the floor of its stage") {
  Coating c = coating(oxidative_law(), {{Stage::sand, hours(12)}});
  c.label_points[index_of(Stage::sand)] = {{celsius(20), hours(12)}, {celsius(30), hours(6)}};
  const DryingClock clock(c, constant_air(38, 40, ten_march_days), sheltered);
  CHECK(clock.reached(Stage::sand, march_1).value() == march_1 + Minutes(6 * 60));
}

TEST_CASE("Clocks of one law share their progress and answer as clocks made alone") {
  const AirSeries air = random_air(3);
  std::vector<Coating> coatings;
  for (const DryingLaw& law : {oxidative_law(), waterborne_law(), oxidative_law(), lacquer_law()})
    coatings.push_back(coating(law, full_label(), 20 + static_cast<double>(coatings.size())));
  const auto clocks = drying_clocks(coatings, air, sheltered, false);
  REQUIRE(clocks.size() == coatings.size());
  for (std::size_t i = 0; i < coatings.size(); ++i) {
    const DryingClock alone(coatings[i], air, sheltered);
    for (const Stage stage : all_stages)
      for (Instant at = march_1; at < march_1 + Minutes(1440); at += Minutes(111))
        CHECK(clocks[i].reached(stage, at) == alone.reached(stage, at));
  }
}

TEST_CASE(
    "Rates every five minutes change a finish by less than half a minute against each minute") {
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const AirSeries air = random_air(seed);
    for (const DryingLaw& law : three_laws()) {
      const Coating c = coating(law, {{Stage::touch, hours(9)}}, 21);
      const double at_label = drying_rate(law, air_at(21, 50), sheltered);
      for (Instant applied = march_1; applied < march_1 + Minutes(2880); applied += Minutes(387)) {
        const auto found = exact_duration(c, Stage::touch, air, sheltered, applied);
        if (!found) continue;
        double done = 0, length = 0;
        for (Instant at = applied; done < 9 * 60; at += Minutes(1)) {
          const double step = (drying_rate(law, air.at(at), sheltered) +
                               drying_rate(law, air.at(at + Minutes(1)), sheltered)) /
                              2 / at_label;
          const double part = done + step > 9 * 60 ? (9 * 60 - done) / step : 1.0;
          done += step * part + (part < 1 ? 1e-9 : 0);
          length += part;
        }
        CHECK(std::abs(found->in(minutes)-length) < 0.5);
      }
    }
  }
}

TEST_CASE("A wait between classes runs on the clock: 72 h at 23 C are over five days at 15 C") {
  const Coating c = coating(oxidative_law(), full_label(), 23.0);
  const Instant applied = march_1 + Minutes(37);
  const DryingClock warm(c, constant_air(23, 50, ten_march_days), sheltered);
  CHECK(warm.dried_for(hours(72), applied).value() == applied + std::chrono::hours(72));
  // 72 h / 0.53787, the rate of this law at 15 C, are 133.9 h.
  const DryingClock cold(c, constant_air(15, 50, ten_march_days), sheltered);
  const double cold_hours =
      to_duration(cold.dried_for(hours(72), applied).value() - applied).in(hours);
  CHECK(cold_hours == doctest::Approx(72 / 0.53787).epsilon(1e-4));
  CHECK(cold_hours > 5 * 24);
  // Never faster than the hours themselves, unless the person says so (rule 1).
  const AirSeries hot_air = constant_air(30, 50, ten_march_days);
  const DryingClock hot(c, hot_air, sheltered), faster(c, hot_air, sheltered, true);
  CHECK(hot.dried_for(hours(72), applied).value() == applied + std::chrono::hours(72));
  CHECK(faster.dried_for(hours(72), applied).value() < applied + std::chrono::hours(72));
  CHECK_FALSE(warm.dried_for(hours(500), applied));
}

TEST_CASE("A wait between classes as long as the recoat time ends with it, whatever the film") {
  const Coating c = coating(oxidative_law(), full_label(), 23.0);
  const AirSeries air = random_air(7);
  const DryingClock clock(c, air, sheltered, true);
  for (const double film : {0.5, 1.0, 2.0})
    for (int start = 0; start < 3000; start += 311) {
      const Instant applied = march_1 + Minutes(start);
      CHECK(clock.dried_for(hours(8), applied, film) ==
            clock.reached(Stage::recoat, applied, film));
    }
}
