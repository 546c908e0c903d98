// Drying times that others have published, against the laws as they are shipped. Coatings are told
// by their kind; the sheets and articles that the figures are from sell some of them and are not
// named.
#include "tackfree/air/drying_rate.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <cmath>
#include <vector>

#include "shipped_data.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

struct Air {
  double t, rh_pct = 50, air_speed = 0.10;
};

double rate(const char* law, const Air& air) {
  const AirState state{celsius(air.t),
                       vapour_pressure(celsius(air.t), humidity_percent(air.rh_pct))};
  return drying_rate(shipped_law(law), state, metres_per_second(air.air_speed));
}

/// By the clock: how many times as long drying takes in `there` as it does in `here`.
double times_as_long(const char* law, const Air& here, const Air& there) {
  return rate(law, here) / rate(law, there);
}

double film_factor(const char* law, Depth depth, double film_ratio) {
  const auto& exponents = shipped_law(law).film_exponents;
  return std::pow(film_ratio, exponents.at(static_cast<std::size_t>(depth)).value);
}

bool within(double found, double printed, double share) {
  return std::abs(found / printed - 1) <= share;
}

struct Point {
  double t, after;
};

/// From the time at one temperature, those at the others.
void check_chart(const char* law, const Point& from, const std::vector<Point>& others,
                 double share) {
  for (const Point& point : others) {
    const double found = from.after * times_as_long(law, {from.t}, {point.t});
    CAPTURE(point.t);
    CAPTURE(found);
    CHECK(within(found, point.after, share));
  }
}

}  // namespace

// Source: UFGS 09971, recoat windows of polyurethane over polyurethane: least hours at the middles
// of 60-70, 81-90, 91-100 and 101-110 F, from the 6 h of 71-80 F. Tolerance: whole hours for ranges
// of 5 K, in which the time changes by a quarter.
TEST_CASE("two-component coats: the recoat times of a government specification") {
  check_chart("two_component", {24.5, 6}, {{18.5, 8}, {30, 4}, {35.5, 3}, {41, 2}}, 0.2);
}

// Source: UFGS 09971, par. 3.7.1.3 (and 09970): for each 10 C (18 F) over 21 C the pot life of
// epoxy and polyurethane is reduced by "approximately half", and doubled for each 10 C under it.
// What gels in the pot is the reaction that dries the film. A text on marine and building coatings
// says the same of full cure, twice at 10 C and half at 30 C of what it is at 20 C. Tolerance: a
// tenth, for "approximately".
TEST_CASE("two-component coats: half the time for ten degrees more, twice for ten less") {
  check_chart("two_component", {21, 1}, {{31, 0.5}, {11, 2}}, 0.1);
  check_chart("two_component", {20, 1}, {{10, 2}, {30, 0.5}}, 0.1);
}

// Source: the chart of a data sheet of a two-component epoxy floor coating, hours until dry and
// minutes until it gels at 40 to 110 F in steps of 10, here from those of 70 F (21 C). Tolerance: a
// fifth; the time at 70 F is a whole hour, 3, known to a sixth, and steps of 10 F are whole degrees
// here. Gelling at 43 C, 16 minutes, is missed by 22 % (below).
TEST_CASE("two-component coats: the chart of an epoxy from 4 to 43 C") {
  check_chart("two_component", {21, 3},
              {{4, 9}, {10, 6}, {16, 4}, {27, 2}, {32, 1.5}, {38, 0.92}, {43, 0.75}}, 0.2);
  check_chart("two_component", {21, 52},
              {{4, 180}, {10, 110}, {16, 62}, {27, 30}, {32, 25}, {38, 18}}, 0.2);
}

// Source: the notes to the data sheets of a maker of marine paint (2013): a physically drying paint
// takes "roughly" twice as long 10 C colder, and "approx" four times as long at twice the film "as
// a rough rule of thumb". The sheets' times are for 20 C. Tolerance: 15 % for "roughly".
TEST_CASE(
    "physically drying coats: twice the time for ten degrees less, four times for twice the film") {
  for (const char* law : {"lacquer", "shellac", "waterborne"}) {
    CAPTURE(law);
    check_chart(law, {20, 1}, {{10, 2}}, 0.15);
  }
  CHECK(within(film_factor("lacquer", Depth::through, 2), 4, 0.15));
  CHECK(within(film_factor("shellac", Depth::through, 2), 4, 0.15));
}

// Sources: a technical note on floor finishes: cold weather "sometimes" doubles or triples the time
// of oil-modified polyurethane; at 10 C, where practice stops putting it on. The answers of a maker
// of floor finishes: at 10 C or less touch-dry comes "several hours" later than the 1.5 h of 25 C,
// and a coat twice as thick takes "at least twice as long". The technical facts of a paint maker:
// in the cold (under 10 C) damp air holds alkyds up "from hours to days".
TEST_CASE("oil varnish: doubled or tripled by the cold, days where it is damp too") {
  const double cold = times_as_long("oxidative", {23}, {10});
  CHECK(cold >= 2);
  CHECK(cold <= 3);
  CHECK(1.5 * times_as_long("oxidative", {25}, {10}) - 1.5 >= 3);
  for (const Depth depth : {Depth::touch, Depth::recoat, Depth::through})
    CHECK(film_factor("oxidative", depth, 2) >= 2);
  CHECK(5 * times_as_long("oxidative", {23}, {8, 90}) > 24);
}

// Source: federal item description A-A-1788, oil-modified alkyd floor varnish: dry hard within 8 h,
// tested as a film of 25 um dry (ASTM D1640, table 1: varnishes). The class has a film of 36.6 um.
// Tolerance: a quarter; "dry hard" by the thumb is what the class has as "dry to sand".
TEST_CASE(
    "oil varnish: hours of the class against a federal specification, by the film exponents") {
  const Coating& varnish = shipped_class("oil_polyurethane");
  const double film =
      1000.0 / varnish.spread.value.in(square_metres_per_litre)*varnish.solids.value.in(fraction) /
      25;
  const double hard = 8 * film_factor("oxidative", Depth::recoat, film);
  CHECK(within(varnish.label_after[index_of(Stage::sand)]->value.in(hours), hard, 0.25));
}

// Source: P. J. Uno, ACI Materials Journal 95 (1998) M34: water from a free surface as warm as the
// air evaporates as (T + 18)^2.5 (1 - RH), T in C. While it is wet a dispersion film dries so (van
// Mechelen 2014). Tolerance: 6 %, at 10 C 14 %; the power stands in for the vapour pressure and is
// that far from it. The laws are independent of each other.
TEST_CASE("waterborne coats: warmth and humidity as water evaporates from wet concrete") {
  const auto by_uno = [](const Air& air) {
    return std::pow(air.t + 18, 2.5) * (1 - air.rh_pct / 100);
  };
  for (const Air& air : {Air{15}, Air{15, 80}, Air{20}, Air{20, 65}, Air{28, 40}, Air{30, 30},
                         Air{30}, Air{35, 40}, Air{10}}) {
    CAPTURE(air.t);
    CAPTURE(air.rh_pct);
    CHECK(within(times_as_long("waterborne", {23}, air), by_uno({23}) / by_uno(air),
                 air.t < 15 ? 0.14 : 0.06));
  }
}

// Source: the data sheet of a waterborne coating: over 60 % RH and under 15 C drying is "strongly
// slowed", taken as twice the time or more.
TEST_CASE("waterborne coats: strongly slowed under 15 C and over 60 % RH") {
  CHECK(times_as_long("waterborne", {23}, {15, 60}) >= 2);
}

// Source: De Bortoli et al., Environ. Sci. Technol. 33 (1999) 1760: from 0.15 to 0.30 m/s the
// emission of glycol vapour (1,2-propanediol) from a waterborne paint rose by 30 %, of pure
// n-decane and 1,4-dichlorobenzene by 50 %. For water in a paint, and for a lacquer's solvents,
// that is an analogy. Tolerance: the figures are round to 10 %, so 5 % to each side, and for
// lacquer 10 %.
TEST_CASE("moving air: what a test chamber found at twice the air speed") {
  CHECK(within(times_as_long("waterborne", {23, 50, 0.30}, {23, 50, 0.15}), 1.3, 0.05));
  CHECK(within(times_as_long("lacquer", {23, 50, 0.30}, {23, 50, 0.15}), 1.5, 0.10));
}

// What docs/formulas.md says of where the clock is wrong, so that it stays true. Sources: as above;
// Huisman et al., Phys. Rev. Lett. 131 (2023) 248102: after some hours a polymer solution loses
// water alike from 25 to about 80 % RH; ASHRAE's equation of still pools, 0.089 + 0.0782 v, in SI
// from memory.
TEST_CASE("where the clock is known to miss, and by how much") {
  // The last column of UFGS 09971, 111 to 120 F: 1 h. By the clock half as much again.
  CHECK(within(6 * times_as_long("two_component", {24.5}, {46.5}), 1.49, 0.01));
  // The epoxy's gelling at 43 C: 16 minutes.
  CHECK(within(52 * times_as_long("two_component", {21}, {43}), 12.5, 0.01));
  // The same epoxy's Shore hardness D 65: 8 h at 21 C, 75 h at 10 C. By the clock a quarter of
  // that.
  CHECK(within(8 * times_as_long("two_component", {21}, {10}), 17.7, 0.01));
  // Open water from 0.1 to 0.5 m/s: 1.32 times as fast by ASHRAE, 1.33 by Uno (v + 4 km/h).
  CHECK(within((0.089 + 0.0782 * 0.5) / (0.089 + 0.0782 * 0.1), (3.6 * 0.5 + 4) / (3.6 * 0.1 + 4),
               0.01));
  CHECK(within(times_as_long("waterborne", {23, 50, 0.5}, {23, 50, 0.1}), 1.79, 0.01));
  // Late drying of a polymer solution between 25 and 80 % RH: no difference. By the clock 3.75
  // times.
  CHECK(within(times_as_long("waterborne", {23, 25}, {23, 80}), 3.75, 0.01));
}
