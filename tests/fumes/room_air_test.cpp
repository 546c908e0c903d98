#include "tackfree/fumes/room_air.hpp"

#include <array>
#include <cmath>
#include <random>

#include "fumes/air_cases.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;
using doctest::Approx;

namespace {

/// A source of pure vapour, `rate` grams an hour from 0 to `end`.
VapourSource steady_vapour(double rate, double end) {
  return source_of(1, {{.mass = rate * end, .length = end, .flashed = 1}});
}

}  // namespace

// Closed forms of the well-mixed box, one coat all at once; figures of an independent fourth-order
// Runge-Kutta run. They check this code, not the world.
TEST_CASE("one coat all at once follows the closed form, at k = N, N = 0 and near both") {
  struct Row {
    double volume, mass, k, n, after_1h, after_8h, mean_8h;
  };
  constexpr std::array rows{Row{90, 540, 0.4, 0.77, 1344.694, 250.702, 893.624},
                            Row{90, 540, 0.4, 6, 286.218, 17.470, 119.541},
                            Row{90, 540, 0.4, 0.4, 1608.768, 782.634, 1553.998},
                            Row{90, 540, 0.4, 0, 1978.080, 5755.427, 4201.429},
                            Row{90, 540, 4, 2, 1404.236, 0.0014, 375.000},
                            Row{30, 45, 0.15, 1, 130.455, 79.639, 121.071},
                            Row{90, 540, 0.4, 20, 82.080, 4.991, 35.940},
                            Row{90, 540, 0.4, 0.400001, 1608.767, 782.631, 1553.995},
                            Row{50, 300, 3, 0.77, 3335.457, 17.050, 971.258}};
  for (const Row& row : rows) {
    CAPTURE(row.k);
    CAPTURE(row.n);
    const RoomAir air =
        room_of(row.volume, {source_of(row.k, {{.mass = row.mass}})}, {{0, row.n * row.volume}});
    check_near(mg_at(air, 1), row.after_1h, 0.001);
    check_near(mg_at(air, 8), row.after_8h, 0.001);
    check_near(mean_mg(air, 0, 8), row.mean_8h, 0.001);
  }
}

// Worked examples of this model, from an independent Runge-Kutta run; they check the code.
TEST_CASE(
    "coats put on over half an hour, fans that change and sprays follow the worked examples") {
  const VapourSource coat = source_of(0.4, {{.mass = 540, .length = 0.5}});
  const RoomAir closed = room_of(90, {coat}, {{0, 69.3}});
  for (const auto& [hour, mg] : {std::pair{0.25, 136.171},
                                 {0.5, 495.230},
                                 {1.0, 1149.928},
                                 {2.0, 1530.267},
                                 {4.0, 1086.111},
                                 {8.0, 275.986}})
    check_near(mg_at(closed, hour), mg, 0.001);
  check_near(mean_mg(closed, 0, 8), 885.271, 0.001);

  const RoomAir fan = room_of(90, {coat}, {{0, 600}});
  for (const auto& [hour, mg] :
       {std::pair{1.0, 280.238}, {2.0, 190.494}, {4.0, 85.597}, {8.0, 17.282}})
    check_near(mg_at(fan, hour), mg, 0.001);
  check_near(mean_mg(fan, 0, 8), 107.099, 0.001);

  const RoomAir stopped = room_of(90, {coat}, {{0, 600}, {2, 0}, {10, 600}});
  for (const auto& [hour, mg] :
       {std::pair{6.0, 2572.418}, {10.0, 3053.320}, {10.25, 582.257}, {11.0, 9.081}, {12.0, 3.494}})
    check_near(mg_at(stopped, hour), mg, 0.001);

  const RoomAir spray =
      room_of(90, {source_of(3, {{.mass = 900, .length = 0.25, .flashed = 0.6}})}, {{0, 900}});
  for (const auto& [hour, mg] :
       {std::pair{0.1, 1676.051}, {0.25, 2779.588}, {0.5, 698.850}, {1.0, 127.984}, {2.0, 6.329}})
    check_near(mg_at(spray, hour), mg, 0.001);
  check_near(mean_mg(spray, 0, 8), 125.000, 0.001);

  const RoomAir level = room_of(90, {coat}, {{0, 36}});
  for (const auto& [hour, mg] : {std::pair{0.5, 525.693}, {2.5, 2190.998}, {8.0, 838.411}})
    check_near(mg_at(level, hour), mg, 0.001);

  const RoomAir late_fan = room_of(90, {source_of(0.4, {{.mass = 540}})}, {{0, 0}, {1, 1800}});
  for (const auto& [hour, mg] : {std::pair{0.5, 1087.615},
                                 {1.0, 1978.080},
                                 {1.1, 335.457},
                                 {1.5, 67.288},
                                 {2.0, 55.020},
                                 {4.0, 24.722}})
    check_near(mg_at(late_fan, hour), mg, 0.001);

  const RoomAir steady = room_of(90, {source_of(200, {{.mass = 400, .length = 4}})}, {{0, 180}});
  for (const auto& [hour, mg] :
       {std::pair{0.5, 349.114}, {1.0, 479.610}, {2.0, 545.277}, {4.0, 555.367}, {5.0, 75.920}})
    check_near(mg_at(steady, hour), mg, 0.001);
}

TEST_CASE("three coats with a fan for three hours each follow the worked example, also alone") {
  const std::vector<Coat> coats{{540, 0, 0.5}, {400, 6, 0.5}, {400, 12, 0.5}};
  const std::vector<FlowFrom> flows{{0, 600},  {3, 69.3}, {6, 600},
                                    {9, 69.3}, {12, 600}, {15, 69.3}};
  const RoomAir all = room_of(90, {source_of(0.4, coats)}, flows);
  for (const auto& [hour, mg] : {std::pair{3.0, 127.695},
                                 {6.0, 449.409},
                                 {9.0, 106.173},
                                 {12.0, 373.665},
                                 {15.0, 104.221},
                                 {18.0, 366.793},
                                 {24.0, 46.607}})
    check_near(mg_at(all, hour), mg, 0.001);
  double sum = 0;
  for (const Coat& coat : coats) sum += mg_at(room_of(90, {source_of(0.4, {coat})}, flows), 14);
  check_near(sum, 155.476, 0.001);
  CHECK(sum == Approx(mg_at(all, 14)).epsilon(1e-9));
}

TEST_CASE("three solvents of one coat follow the worked example") {
  const auto coat = [](double mass, double k) {
    return source_of(k, {{.mass = mass, .length = 0.25}});
  };
  const RoomAir air = room_of(60, {coat(200, 2), coat(300, 1), coat(150, 5)}, {{0, 300}});
  check_near(concentration(air, 0, hours(1)).in(milligrams_per_cubic_metre), 360.369, 0.001);
  check_near(concentration(air, 1, hours(1)).in(milligrams_per_cubic_metre), 505.656, 0.001);
  check_near(concentration(air, 2, hours(1)).in(milligrams_per_cubic_metre), 142.563, 0.001);
}

// Source: Engineering ToolBox, "Concentration of pollution in rooms", read there: source 1, volume
// 1; n in 1/h, minutes, concentration.
TEST_CASE("a steady source in a room builds up as in the published table") {
  struct Row {
    double n, at_minutes, printed;
  };
  for (const Row& row :
       {Row{1, 10, 0.1535}, {4, 20, 0.1841}, {2, 40, 0.3682}, {0.5, 640, 1.9903}}) {
    const RoomAir air = room_of(1, {steady_vapour(1, 20)}, {{0, row.n}});
    const double found =
        concentration(air, 0, hours(row.at_minutes / 60)).in(grams_per_cubic_metre);
    check_near(found, row.printed, 0.00006);
  }
}

// Vapour in cubic feet and ppm: a gram stands for a cubic foot, the flow is cfm x 60.
TEST_CASE("published build-up and purging examples come out") {
  // Source: documentation of the R package rEHS, function concentration, read there: 1.4 cfm of
  // vapour, 2,500 cfm of air, 75,000 ft3, after 11 minutes.
  const RoomAir rehs = room_of(75000, {steady_vapour(1.4 * 60, 2)}, {{0, 2500.0 * 60}});
  check_near(concentration(rehs, 0, hours(11.0 / 60)).in(grams_per_cubic_metre)*1e6, 171.90, 0.01);
  // Source: ACGIH, Industrial Ventilation, dilution ventilation (from memory): 1.2 cfm, 2,000 cfm,
  // 100,000 ft3: 200 ppm after 20.3 min, 419 ppm after 60.
  const RoomAir acgih = room_of(100000, {steady_vapour(1.2 * 60, 2)}, {{0, 2000.0 * 60}});
  check_near(concentration(acgih, 0, hours(20.3 / 60)).in(grams_per_cubic_metre)*1e6, 200, 0.5);
  check_near(concentration(acgih, 0, hours(1)).in(grams_per_cubic_metre)*1e6, 419, 0.5);
  // The same source: from 100 ppm, with the vapour off, 25 ppm after 69.3 min and 30.1 after 60.
  VapourSource left = source_of(1, {});
  left.in_air = grams(100e-6 * 100000);
  const RoomAir purge = room_of(100000, {left}, {{0, 2000.0 * 60}});
  check_near(concentration(purge, 0, hours(69.3 / 60)).in(grams_per_cubic_metre)*1e6, 25, 0.05);
  check_near(concentration(purge, 0, hours(1)).in(grams_per_cubic_metre)*1e6, 30.1, 0.05);
}

// A long steady source reaches emission over flow; the published flows must hold the published
// limits. Each printed flow has its own rounding.
TEST_CASE("published dilution flows bring a steady source to the limit they are meant for") {
  struct Row {
    double vapour, air, limit, within;
  };
  const std::array rows{
      // Source: Abulencia and Theodore, Fluid Flow for the Practicing Chemical Engineer, example
      // 20.2, read: 2.15 L/min of vapour, K = 5, 80 ppm: 134,375 L/min. The air works as air / K.
      Row{2.15, 134375.0 / 5, 80e-6, 1e-8},
      // Source: the same book, example 20.7, read: 250 ng/min, supply air at 10, limit 35 ng/m3:
      // 10 m3/min; the supply's own 10 is taken off the limit.
      Row{250, 10, 35 - 10, 1e-6},
      // Source: Himmelblau and Riggs, Basic Principles and Calculations in Chemical Engineering,
      // chapter 3, read: 5/8 kg/h, limit 1.3e-6 kg/m3: 133.547 m3/s.
      Row{0.625 / 3600, 133.547, 1.3e-6, 1e-11},
      // Source: ACGIH, Industrial Ventilation (from memory): 1.5 pints/h of methyl chloroform, 350
      // ppm, K = 5: 1,425 cfm. 403 ft3 a pint x specific gravity / molar mass.
      Row{403.0 * 1.32 / 133.4 * 1.5 / 60, 1425.0 / 5, 350e-6, 1e-6},
      // The same: 2 pints/h of methyl ethyl ketone and of toluene, K = 4: 3,000 and 5,051 cfm.
      Row{403.0 * 0.805 / 72.1 * 2 / 60, 3000.0 / 4, 200e-6, 1e-7},
      Row{403.0 * 0.866 / 92.13 * 2 / 60, 5051.0 / 4, 100e-6, 1e-7},
      // The same: 2 pints/h of xylene in an oven, LEL 1.0 %, C = 10, B = 0.7: 159 cfm at 70 F: a
      // tenth of 0.7 of the limit.
      Row{403.0 * 0.88 / 106 * 2 / 60, 159, 0.01 * 0.7 / 10, 3e-6}};
  for (const Row& row : rows) {
    CAPTURE(row.air);
    const RoomAir air = room_of(row.air, {steady_vapour(row.vapour, 90)}, {{0, row.air}}, 100);
    check_near(concentration(air, 0, hours(89)).in(grams_per_cubic_metre), row.limit, row.within);
  }
}

namespace {

/// A plan by chance: coats, solvents, air changes with fans on and off, from a fixed seed.
struct Chance {
  std::mt19937 engine;
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  }
  std::vector<Coat> coats() {
    std::vector<Coat> result;
    const int count = 1 + static_cast<int>(between(0, 6));
    for (int i = 0; i < count; ++i)
      result.push_back({between(10, 900), between(0, 60), between(0.05, 2), between(0, 0.9)});
    return result;
  }
  std::vector<FlowFrom> flows() {
    std::vector<FlowFrom> result{{0, between(0, 100)}};
    for (double hour = between(0.1, 9); hour < 80; hour += between(0.1, 20))
      result.push_back({hour, between(0, 1) < 0.2 ? 0.0 : std::exp(between(0, 8))});
    return result;
  }
};

constexpr int plans = 200;

}  // namespace

TEST_CASE("what was put on is wet, in the air or carried out, on any plan") {
  /// The share of an even coat that has not evaporated by `end`, with release `k`.
  const auto still_wet = [](double k, const Coat& coat, double end) {
    const double since = end - coat.begin - coat.length;
    if (coat.length <= 0) return std::exp(-k * since);
    return std::exp(-k * since) * -std::expm1(-k * coat.length) / (k * coat.length);
  };
  Chance chance{std::mt19937(6)};
  for (int plan = 0; plan < plans; ++plan) {
    const std::vector<Coat> coats = chance.coats();
    const double volume = chance.between(10, 200), k = std::exp(chance.between(-3, 5));
    const std::vector<FlowFrom> flows = chance.flows();
    constexpr double end = 150;
    const RoomAir air = room_of(volume, {source_of(k, coats)}, flows);
    double mass = 0, wet = 0, vented = 0;
    for (const Coat& coat : coats) {
      mass += coat.mass;
      wet += coat.mass * (1 - coat.flashed) * still_wet(k, coat, end);
    }
    for (std::size_t i = 0; i < flows.size(); ++i) {
      const double until = i + 1 < flows.size() ? flows[i + 1].hour : end;
      vented +=
          flows[i].flow / volume *
          (air.sum_in_air_hours(only(0), until) - air.sum_in_air_hours(only(0), flows[i].hour));
    }
    CHECK(wet + air.sum_in_air(only(0), end) + vented == Approx(mass).epsilon(1e-9));
  }
}

TEST_CASE("coats together are the sum of the coats alone, and splitting the air changes nothing") {
  Chance chance{std::mt19937(7)};
  for (int plan = 0; plan < plans; ++plan) {
    const std::vector<Coat> coats = chance.coats();
    const std::vector<FlowFrom> flows = chance.flows();
    const double k = std::exp(chance.between(-3, 5)), volume = chance.between(10, 200);
    const double hour = chance.between(0, 100);
    double sum = 0;
    for (const Coat& coat : coats)
      sum += mg_at(room_of(volume, {source_of(k, {coat})}, flows), hour);
    const double together = mg_at(room_of(volume, {source_of(k, coats)}, flows), hour);
    CHECK(together == Approx(sum).epsilon(1e-8).scale(1e-6));
    std::vector<FlowFrom> split;
    for (std::size_t i = 0; i < flows.size(); ++i) {
      split.push_back(flows[i]);
      const double next = i + 1 < flows.size() ? flows[i + 1].hour : 90;
      split.push_back({(flows[i].hour + next) / 2, flows[i].flow});
    }
    CHECK(mg_at(room_of(volume, {source_of(k, coats)}, split), hour) ==
          Approx(together).epsilon(1e-9).scale(1e-6));
  }
}

TEST_CASE("twice the solvent is twice the vapour, twice the room and flow is half") {
  Chance chance{std::mt19937(8)};
  for (int plan = 0; plan < plans; ++plan) {
    const double k = std::exp(chance.between(-2, 3)), flow = std::exp(chance.between(1, 7));
    const double hour = chance.between(0.1, 20), mass = chance.between(10, 900);
    const auto found = [&](double volume, double m, double q) {
      return mg_at(room_of(volume, {source_of(k, {{.mass = m, .length = 0.5}})}, {{0, q}}), hour);
    };
    CHECK(found(90, 2 * mass, flow) == Approx(2 * found(90, mass, flow)).epsilon(1e-9));
    CHECK(found(180, mass, 2 * flow) == Approx(found(90, mass, flow) / 2).epsilon(1e-9));
  }
}

TEST_CASE("the dose of all time is the solvent over the flow, whatever the release and the pace") {
  for (const double k : {0.1, 0.4, 3.0, 50.0})
    for (const double length : {0.0, 0.5, 6.0}) {
      const RoomAir air =
          room_of(90, {source_of(k, {{.mass = 540, .length = length}})}, {{0, 69.3}}, 1000);
      CHECK(mean_mg(air, 0, 1000) * 1000 == Approx(540e3 / 69.3).epsilon(1e-9));
    }
}

TEST_CASE("k as good as N gives what k = N gives, for the dose too") {
  for (const double off : {-1e-9, 1e-9, -1e-6, 1e-6}) {
    const auto air = [](double n) {
      return room_of(90, {source_of(0.4, {{.mass = 540}})}, {{0, 90 * n}});
    };
    for (const double hour : {0.5, 5.0, 50.0}) {
      const double limit = 1e-8 + 50 * std::abs(off);
      CHECK(mg_at(air(0.4 * (1 + off)), hour) == Approx(mg_at(air(0.4), hour)).epsilon(limit));
      CHECK(mean_mg(air(0.4 * (1 + off)), 0, hour) ==
            Approx(mean_mg(air(0.4), 0, hour)).epsilon(limit));
    }
  }
}

TEST_CASE("huge exponents neither overflow nor leave anything behind") {
  for (const auto& [k, n] : {std::pair{5000.0, 0.0}, {5000.0, 0.5}, {0.4, 4000.0}, {1e4, 1e4}}) {
    const RoomAir air = room_of(90, {source_of(k, {{.mass = 540, .length = 1}})}, {{0, 90 * n}});
    for (const double hour : {0.5, 1.0, 2.0, 300.0}) {
      CHECK(std::isfinite(mg_at(air, hour)));
      CHECK(mg_at(air, hour) >= 0);
      CHECK(mg_at(air, hour) <= 540e3 / 90 * (1 + 1e-12));
    }
  }
}

TEST_CASE("in a still room the vapour never falls and never passes all of it") {
  Chance chance{std::mt19937(9)};
  for (int plan = 0; plan < plans; ++plan) {
    const std::vector<Coat> coats = chance.coats();
    double mass = 0, before = 0;
    for (const Coat& coat : coats) mass += coat.mass;
    const RoomAir air = room_of(50, {source_of(std::exp(chance.between(-3, 5)), coats)}, {{0, 0}});
    for (double hour = 0; hour < 100; hour += 2.5) {
      CHECK(mg_at(air, hour) >= before - 1e-6);
      before = mg_at(air, hour);
    }
    CHECK(before <= mass * 1e3 / 50 * (1 + 1e-9));
  }
}

TEST_CASE("a coat put on ever faster tends to one put on all at once") {
  const auto found = [](double length) {
    return mg_at(room_of(90, {source_of(0.4, {{.mass = 540, .length = length}})}, {{0, 69.3}}), 2);
  };
  CHECK(std::abs(found(1e-6) / found(0) - 1) < 1e-6);
  CHECK(std::abs(found(1e-3) / found(0) - 1) > 1e-6);
}
