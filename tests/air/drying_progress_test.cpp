// What must hold of the sums behind the clock, and what their steps cost in truth.
#include "tackfree/air/drying_progress.hpp"

#include <cmath>
#include <vector>

#include "air/exact_drying.hpp"
#include "air/sample_air.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

const Instant first_of_march = instant("2026-03-01T00:00:00Z");
const Interval march_days{first_of_march, first_of_march + Minutes(10 * 1440)};

std::int64_t label_hours(double h) {
  return static_cast<std::int64_t>(progress_per_minute * 60 * h);
}

DryingProgress progress(const DryingLaw& law, const AirSeries& air, Minutes step = rate_step) {
  return {[law](const HumidAir& at) { return drying_rate(law, at, metres_per_second(0.10)); },
          rate_points(air, step), 1.0};
}

/// Progress from the beginning of the ten days on.
std::int64_t done_by(const DryingProgress& sums, Instant at) {
  return done_between(sums, march_days.begin, at);
}

/// Laws that stop at 5 and at 0 C and one that never does in this air.
std::vector<DryingLaw> all_laws() {
  return {oxidative_law(), waterborne_law(), lacquer_law(), two_component_law(), moisture_law()};
}

AirSeries air_of_seed(std::uint64_t seed) {
  return series(random_rows(seed, first_of_march, 241), march_days);
}

}  // namespace

TEST_CASE("Halving the step changes a finish by less than a minute") {
  // The clock's own step against each minute, which is less than its half, and halves of whole
  // minutes.
  struct Halving {
    Minutes step, half;
  };
  int compared = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const AirSeries air = air_of_seed(seed);
    for (const DryingLaw& law : all_laws()) {
      for (const auto& [step, half] :
           {Halving{rate_step, Minutes(1)}, Halving{Minutes(4), Minutes(2)},
            Halving{Minutes(2), Minutes(1)}}) {
        const DryingProgress coarse = progress(law, air, step);
        const DryingProgress fine = progress(law, air, half);
        for (Instant at = first_of_march; at < first_of_march + Minutes(3 * 1440);
             at += Minutes(173)) {
          const auto a = exact_time(coarse, at, label_hours(7));
          const auto b = exact_time(fine, at, label_hours(7));
          if (!a || !b) continue;
          REQUIRE(std::abs((*a - *b).in(minutes)) < 1.0);
          ++compared;
        }
      }
    }
  }
  CHECK(compared > 2000);
}

TEST_CASE("Splitting an interval does not change its integral") {
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const AirSeries air = air_of_seed(seed);
    for (const DryingLaw& law : all_laws()) {
      const DryingProgress whole = progress(law, air);
      for (int day = 1; day < 10; ++day) {
        // The sums over each part, begun at an odd minute, add up to that of the whole.
        const Instant middle = first_of_march + Minutes(1440L * day + 37L * day);
        const auto rows = random_rows(seed, first_of_march, 241);
        const DryingProgress first = progress(law, series(rows, {first_of_march, middle}));
        const DryingProgress second = progress(law, series(rows, {middle, march_days.end}));
        const double in_two = static_cast<double>(done_by(first, middle)) +
                              static_cast<double>(done_between(second, middle, march_days.end));
        const double in_one = static_cast<double>(done_by(whole, march_days.end));
        // The step that is split is summed by the minute, else as a whole: a tenth of a minute.
        CHECK(std::abs(in_two - in_one) / progress_per_minute < 0.1);
      }
    }
  }
}

TEST_CASE("The first minute has as much done, the minute before has not") {
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const AirSeries air = air_of_seed(seed);
    for (const DryingLaw& law : all_laws()) {
      const DryingProgress sums = progress(law, air);
      for (const double h : {0.01, 0.4, 3.0, 11.0, 60.0})
        for (Instant at = first_of_march - Minutes(30); at < march_days.end; at += Minutes(331)) {
          const std::int64_t done = done_by(sums, at);
          const auto found = sums.first_minute(at, label_hours(h));
          if (!found) {
            REQUIRE(done_by(sums, march_days.end) - done < label_hours(h));
            continue;
          }
          REQUIRE(done_by(sums, *found) - done >= label_hours(h));
          REQUIRE(done_by(sums, *found - Minutes(1)) - done < label_hours(h));
          const Duration exact = exact_time(sums, at, label_hours(h)).value();
          REQUIRE(exact <= to_duration(*found - at));
          REQUIRE(exact > to_duration(*found - at - Minutes(1)));
        }
    }
  }
}

TEST_CASE("Progress never falls and stands still where drying has stopped") {
  const AirSeries cold =
      series(hourly(first_of_march, std::vector<double>(241, 4.0), -2), march_days);
  CHECK(done_by(progress(waterborne_law(), cold), march_days.end) == 0);
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const AirSeries air = air_of_seed(seed);
    for (const DryingLaw& law : all_laws()) {
      const DryingProgress sums = progress(law, air);
      std::int64_t before = 0;
      for (Instant at = first_of_march; at <= march_days.end; at += Minutes(7)) {
        const std::int64_t done = done_by(sums, at);
        REQUIRE(done >= before);
        before = done;
      }
    }
  }
}

TEST_CASE("Drying that stops inside a step counts until the minute it stops") {
  // From 6 C down to 4 C in an hour: a film that stops under 5 C dries for half of it.
  const AirSeries air = series(hourly(first_of_march, {6, 4, 4}, -2),
                               {first_of_march, first_of_march + Minutes(120)});
  const DryingProgress sums = progress(waterborne_law(), air);
  CHECK(done_by(sums, first_of_march + Minutes(31)) ==
        done_by(sums, first_of_march + Minutes(120)));
  CHECK(done_by(sums, first_of_march + Minutes(30)) > done_by(sums, first_of_march + Minutes(29)));
}

TEST_CASE("Rows at odd minutes are where rates are taken") {
  AirRows odd = hourly(first_of_march, {}, 0);
  for (int i = 0; i < 5; ++i) odd.rows.push_back(row(first_of_march + Minutes(51L * i), 10 + i, 2));
  const RatePoints taken =
      rate_points(series(odd, {first_of_march + Minutes(3), first_of_march + Minutes(200)}));
  CHECK(taken.points.front().at == first_of_march + Minutes(3));
  CHECK(taken.points[1].at == first_of_march + Minutes(5));
  CHECK(taken.points[11].at == first_of_march + Minutes(51));
  CHECK(taken.points[11].air.temperature.in_celsius() == doctest::Approx(11));
  CHECK(taken.points.back().at == first_of_march + Minutes(200));
}
