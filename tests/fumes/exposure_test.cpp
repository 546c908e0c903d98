#include "tackfree/fumes/exposure.hpp"

#include <array>
#include <cmath>
#include <random>

#include "fumes/air_cases.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;
using doctest::Approx;

namespace {

double peak_mg(const RoomAir& air) { return highest(air, in_mg()).value; }
double quarter_hour_mg(const RoomAir& air) { return highest(air, in_mg(quarter_hour)).value; }

VapourSource at_once(double mass, double k) { return source_of(k, {{.mass = mass}}); }

double least_flow(double volume, const VapourSource& source, double window, double most) {
  return least_changes(cubic_metres(volume), {source}, hours(300), in_mg(window), most)
      .value()
      .in(per_hour)*volume;
}

}  // namespace

// Closed forms of the well-mixed box; they check the code, not the world.
TEST_CASE(
    "peak, its hour, the worst quarter hour and the hours under two levels are the closed form's") {
  struct Row {
    double volume, mass, k, n, at, peak, worst_15, under_350, under_50;
  };
  constexpr std::array rows{Row{90, 540, 0.4, 0.77, 1.77007, 1535.422, 1534.192, 7.1121, 12.1354},
                            Row{90, 540, 0.4, 6, 0.48358, 329.650, 327.636, 0, 5.3711},
                            Row{90, 540, 0.4, 0.4, 2.5, 2207.277, 2206.357, 10.7506, 16.7194},
                            Row{90, 540, 4, 2, 0.34657, 3000.000, 2939.024, 1.7521, 2.7382},
                            Row{30, 45, 0.15, 1, 2.23191, 160.986, 160.923, 0, 11.1101},
                            Row{90, 540, 0.4, 20, 0.19959, 110.792, 108.858, 0, 2.2392},
                            Row{90, 540, 0.4, 0.400001, 2.5, 2207.274, 2206.355, 10.7506, 16.7194},
                            Row{50, 300, 3, 0.77, 0.60986, 3751.557, 3729.195, 4.0754, 6.6027}};
  for (const Row& row : rows) {
    CAPTURE(row.k);
    CAPTURE(row.n);
    const RoomAir air = room_of(row.volume, {at_once(row.mass, row.k)}, {{0, row.n * row.volume}});
    const Highest peak = highest(air, in_mg());
    check_near(peak.value, row.peak, 0.001);
    check_near(peak.at.in(hours), row.at, 2e-4);
    CHECK(quarter_hour_mg(air) == Approx(row.worst_15).epsilon(1e-4));
    check_near(hour_under(air, 350), row.under_350, 1e-4);
    check_near(hour_under(air, 50), row.under_50, 1e-4);
  }
}

// Worked examples of this model by an independent Runge-Kutta run; they check the code.
TEST_CASE("peaks, rolling means and hours under a level are those of the worked examples") {
  const VapourSource coat = source_of(0.4, {{.mass = 540, .length = 0.5}});
  const RoomAir closed = room_of(90, {coat}, {{0, 69.3}});
  check_near(peak_mg(closed), 1530.51, 0.02);
  check_near(highest(closed, in_mg()).at.in(hours), 2.0322, 1e-3);
  CHECK(quarter_hour_mg(closed) == Approx(1529.29).epsilon(1e-3));
  check_near(hour_under(closed, 350), 7.3657, 1e-3);

  const RoomAir fan = room_of(90, {coat}, {{0, 600}});
  check_near(peak_mg(fan), 293.27, 0.02);
  CHECK(quarter_hour_mg(fan) == Approx(291.28).epsilon(1e-3));
  check_near(hour_under(fan, 50), 5.3441, 1e-3);

  const RoomAir level = room_of(90, {coat}, {{0, 36}});
  check_near(peak_mg(level), 2203.60, 0.02);
  check_near(hour_under(level, 350), 11.0035, 1e-3);

  const RoomAir spray =
      room_of(90, {source_of(3, {{.mass = 900, .length = 0.25, .flashed = 0.6}})}, {{0, 900}});
  check_near(peak_mg(spray), 2779.588, 0.02);
  CHECK(quarter_hour_mg(spray) == Approx(2204.61).epsilon(1e-3));
  check_near(hour_under(spray, 350), 0.6828, 1e-3);

  VapourSource left = source_of(1, {});
  left.in_air = grams(2.0 * 90);
  const RoomAir purge = room_of(90, {left}, {{0, 540}});
  check_near(mg_at(purge, 0.25), 446.260, 0.001);
  check_near(hour_under(purge, 350), 0.2905, 1e-3);
  check_near(hour_under(purge, 50), 0.6148, 1e-3);
}

TEST_CASE("a fan that stops while the coat is wet lets the vapour rise above any coat's own peak") {
  const std::vector<Coat> coats{{540, 0, 0.5}, {400, 6, 0.5}, {400, 12, 0.5}};
  const RoomAir air = room_of(90, {source_of(0.4, coats)},
                              {{0, 600}, {3, 69.3}, {6, 600}, {9, 69.3}, {12, 600}, {15, 69.3}});
  const Highest peak = highest(air, in_mg());
  check_near(peak.value, 546.76, 0.02);
  check_near(peak.at.in(hours), 4.6056, 1e-3);
  check_near(highest(air, in_mg(), hours(9), hours(12)).value, 454.61, 0.02);
  check_near(highest(air, in_mg(), hours(15), hours(30)).value, 446.25, 0.02);
  CHECK(highest(air, in_mg(8)).value == Approx(348.4).epsilon(1e-3));
  check_near(hour_under(air, 350), 18.1937, 1e-3);
  check_near(hour_under(air, 50), 23.8182, 1e-3);

  const RoomAir stopped =
      room_of(90, {source_of(0.4, {{540, 0, 0.5}})}, {{0, 600}, {2, 0}, {10, 600}});
  check_near(hour_under(stopped, 350), 10.3275, 1e-3);
}

TEST_CASE("solvents count together, for exposure and for fire") {
  const auto coat = [](double mass, double k) {
    return source_of(k, {{.mass = mass, .length = 0.25}});
  };
  const std::vector<VapourSource> sources{coat(200, 2), coat(300, 1), coat(150, 5)};
  const RoomAir air = room_of(60, sources, {{0, 300}});
  const Limits exposure{milligrams_per_cubic_metre(375), milligrams_per_cubic_metre(710),
                        milligrams_per_cubic_metre(590)};
  const Highest index = highest(air, {exposure, {}});
  check_near(index.value, 4.1532, 1e-4);
  check_near(index.at.in(hours), 0.4126, 1e-3);
  check_near(last_above(air, {exposure, {}}, 1, hours(0), hours(100))->in(hours), 1.3967, 1e-3);
  check_near(last_above(air, {exposure, {}}, 0.1, hours(0), hours(100))->in(hours), 3.1487, 1e-3);
  check_near(value_at(air, {exposure, hours(8)}, hours(8)), 0.50413, 1e-5);
  // Explosive limits of 1.1, 1.7 and 2.5 % by volume at 24.055 L/mol.
  const Limits fire{grams_per_cubic_metre(11 * 92.14 / 24.055),
                    grams_per_cubic_metre(17 * 116.16 / 24.055),
                    grams_per_cubic_metre(25 * 58.08 / 24.055)};
  check_near(highest(air, {fire, {}}).value * 100, 3.798, 0.001);
  const RoomAir still = room_of(60, sources, {{0, 0}});
  check_near(highest(still, {fire, {}}).value * 100, 18.144, 0.001);
}

// Source: 29 CFR 1910.1000(d) (from memory): 500/1000 + 45/200 + 40/200 = 0.925; and the mean of
// 2 h at 150, 2 h at 75, 4 h at 50 ppm over 8 h is 81.25.
TEST_CASE("the regulation's own examples of the mixture rule and of the 8-hour mean come out") {
  const auto in_air = [](double mg) {
    VapourSource source = source_of(1, {});
    source.in_air = grams(mg * 1e-3);
    return source;
  };
  const RoomAir mixture = room_of(1, {in_air(500), in_air(45), in_air(40)}, {{0, 0}});
  CHECK(value_at(mixture,
                 {{milligrams_per_cubic_metre(1000), milligrams_per_cubic_metre(200),
                   milligrams_per_cubic_metre(200)},
                  {}},
                 hours(1)) == Approx(0.925));
  // Steady feeds with a fast release and air at 1000 changes an hour: levels of 150, 75 and 50.
  VapourSource steps =
      source_of(1, {{150e-3 * 2000, 0, 2, 1}, {75e-3 * 2000, 2, 2, 1}, {50e-3 * 4000, 4, 4, 1}});
  const RoomAir day = room_of(1, {steps}, {{0, 1000}});
  CHECK(mean_mg(day, 0, 8) == Approx(81.25).epsilon(1e-3));
}

TEST_CASE("least flows are those of the worked examples") {
  // Mineral spirits: 10 % and 25 % of 47.9 g/m3.
  CHECK(least_flow(90, at_once(2000, 0.4), 0, 4790) == Approx(91.03).epsilon(1e-3));
  CHECK(least_flow(90, at_once(2000, 0.4), 0, 11975) == Approx(14.72).epsilon(1e-3));
  CHECK(least_flow(90, at_once(540, 0.4), 0, 1800) == Approx(52.83).epsilon(1e-3));
  CHECK(least_flow(90, at_once(540, 0.4), quarter_hour, 1800) == Approx(52.769).epsilon(1e-3));
  CHECK(least_flow(90, at_once(540, 0.4), 0, 350) == Approx(503.72).epsilon(1e-3));
  const VapourSource coat = source_of(0.4, {{540, 0, 0.5}});
  CHECK(least_flow(90, coat, 8, 350) == Approx(182.50).epsilon(1e-3));
  const VapourSource spray = source_of(3, {{900, 0, 0.25, 0.6}});
  CHECK(least_flow(90, spray, 0, 5000) == Approx(295.05).epsilon(1e-3));
  CHECK(least_flow(90, spray, 0, 2500) == Approx(1034.5).epsilon(1e-3));
}

TEST_CASE("a still room needs no flow when all of the solvent stays under the limit") {
  CHECK(least_flow(90, at_once(540, 0.4), 0, 6000.001) == 0);
  CHECK(least_flow(90, at_once(540, 0.4), 0, 5900) > 0);
}

TEST_CASE(
    "more air never raises a peak or a mean, nor needs a limit more air than the bounds say") {
  std::mt19937 engine(11);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  };
  for (int plan = 0; plan < 40; ++plan) {
    const double k = std::exp(between(-2, 3)), volume = between(10, 150);
    const VapourSource source = source_of(
        k, {{between(10, 900), 0, between(0.05, 1)}, {between(10, 900), between(1, 30), 0.5}});
    double peak = 1e300, mean = 1e300, mass = 0;
    for (const Application& each : source.applications) mass += each.solvent.in(grams)*1e3;
    for (double n = 0; n < 40; n = 2 * n + 0.1) {
      const RoomAir air = room_of(volume, {source}, {{0, n * volume}});
      CHECK(peak_mg(air) <= peak * (1 + 1e-9));
      CHECK(highest(air, in_mg(8)).value <= mean * (1 + 1e-9));
      CHECK(peak_mg(air) <= mass / volume * (1 + 1e-9));
      peak = peak_mg(air);
      mean = highest(air, in_mg(8)).value;
    }
    const double limit = mass / volume / between(2, 50);
    const double flow = least_flow(volume, source, 0, limit);
    CHECK(flow <= mass * k / limit * (1 + 1e-3));
    CHECK(least_flow(volume, source, 8, limit) <= mass / (8 * limit) * (1 + 1e-3));
    CHECK(peak_mg(room_of(volume, {source}, {{0, flow}})) <= limit * (1 + 1e-6));
    CHECK(peak_mg(room_of(volume, {source}, {{0, flow * 0.999}})) > limit);
  }
}

TEST_CASE("the highest value is no lower than any on a fine grid, on any plan") {
  std::mt19937 engine(12);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  };
  for (int plan = 0; plan < 40; ++plan) {
    std::vector<Coat> coats;
    for (int i = 0; i < 4; ++i)
      coats.push_back({between(10, 900), between(0, 40), between(0.05, 1), between(0, 1)});
    std::vector<FlowFrom> flows{{0, 20}};
    for (double hour = between(0, 5); hour < 50; hour += between(0.2, 8))
      flows.push_back({hour, std::exp(between(0, 8))});
    const RoomAir air = room_of(60, {source_of(std::exp(between(-2, 4)), coats)}, flows);
    for (const double window : {0.0, 0.25, 8.0}) {
      const double found = highest(air, in_mg(window)).value;
      double grid = 0;
      for (double hour = 0; hour < 80; hour += 0.01)
        grid = std::max(grid, value_at(air, in_mg(window), hours(hour)));
      CHECK(found >= grid * (1 - 1e-9));
      CHECK(found <= grid * 1.05 + 1e-9);
      CHECK(stays_within(air, in_mg(window), found * 1.0001));
      CHECK_FALSE(stays_within(air, in_mg(window), found * 0.9999));
    }
  }
}
