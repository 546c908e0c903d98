#include "tackfree/volume/film.hpp"

#include <array>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

// Printed figures are rounded in their last digit: half of it is the tolerance.
bool prints_as(double computed, double printed, double half_digit) {
  return computed > printed - half_digit && computed < printed + half_digit;
}

/// What a litre covers in theory at a dry film: where wet_film and dry_film come to it. A litre on
/// 1 m2 has a dry film so many times as thick.
SpreadRate theoretical_spread(Fraction solids, FilmThickness dry) {
  return square_metres_per_litre(dry_film(wet_film(square_metres_per_litre(1)), solids) / dry);
}

double m2_per_l(Fraction solids, FilmThickness dry) {
  return theoretical_spread(solids, dry).in(square_metres_per_litre);
}
double ft2_per_gal(Fraction solids, FilmThickness dry) {
  return theoretical_spread(solids, dry).in(square_feet_per_us_gallon);
}

}  // namespace

// Source: worked examples of published technical notes on volume solids and spreading rate.
TEST_CASE("theoretical spreading rates come out as technical notes print them") {
  CHECK(prints_as(m2_per_l(percent(65), micrometres(125)), 5.2, 0.05));
  CHECK(prints_as(m2_per_l(percent(71), micrometres(125)), 5.7, 0.05));
  CHECK(m2_per_l(percent(71), micrometres(125)) == Approx(5.68));
  CHECK(wet_film(square_metres_per_litre(5.68)).in(micrometres) == Approx(176).epsilon(0.003));
}

// Source: published technical notes and tables that reckon with 1604 ft2 mil/gal; the exact
// constant 1604.1667 (231 / 0.144, by the gallon of 231 cubic inches, NIST SP 811) lies 0.0104 %
// above it, and whole figures are rounded by a half.
TEST_CASE("spreading rates in square feet per gallon are those of the 1604 rule") {
  struct Row {
    double solids_pct, dry_mil, printed, tolerance;
  };
  constexpr std::array rows{Row{65, 5.0, 208.52, 0.03}, Row{35, 1.0, 561, 0.6},
                            Row{35, 2.0, 281, 0.6},     Row{45, 1.0, 722, 0.6},
                            Row{45, 2.0, 361, 0.6},     Row{100, 10.0, 160.417, 0.001}};
  for (const Row& row : rows) {
    CAPTURE(row.solids_pct);
    CAPTURE(row.dry_mil);
    CHECK(prints_as(ft2_per_gal(percent(row.solids_pct), mils(row.dry_mil)), row.printed,
                    row.tolerance));
  }
}

TEST_CASE("the American constant is 231 over 0.144") {
  CHECK(ft2_per_gal(percent(100), mils(1)) == Approx(231 / 0.144).epsilon(1e-12));
}

// Source: MIL-HDBK-1110 par. 2.1.5 for the rule; numbers of published technical notes.
TEST_CASE("dry film is wet film times solids") {
  CHECK(dry_film(micrometres(100), percent(50)).in(micrometres) == Approx(50));
  CHECK(dry_film(mils(8), percent(35)).in(mils) == Approx(2.8));
  CHECK(prints_as(wet_film(theoretical_spread(percent(42), mils(1.5))).in(mils), 3.57, 0.005));
  CHECK(dry_film(mils(3.57), percent(42)).in(mils) == Approx(1.5).epsilon(0.001));
}

// Source: MIL-HDBK-1110 par. 2.1.5: 1600 ft2 at 1 mil of 100 % solids, a constant rounded from
// 1604.
TEST_CASE("the military handbook's rounded rates agree within its rounding") {
  CHECK(ft2_per_gal(percent(100), mils(1)) == Approx(1600).epsilon(0.003));
  CHECK(ft2_per_gal(percent(100), mils(2)) == Approx(800).epsilon(0.003));
  CHECK(ft2_per_gal(percent(100), mils(4)) == Approx(400).epsilon(0.003));
  CHECK(ft2_per_gal(percent(50), mils(2)) == Approx(400).epsilon(0.003));
}

// Source: a published technical note (rule); 8.8 mil is arithmetic by it: 2.8 x 1.10 / 0.35.
TEST_CASE("thinned by 10 % it takes 8.8 mil wet for 2.8 mil dry at 35 % solids") {
  CHECK(dry_film(mils(8.8), percent(35), percent(10)).in(mils) == Approx(2.8));
}

// Source: a published article on wet and dry film.
TEST_CASE("at 8 m2/L and 40 % solids a coat is 125 um wet and 50 um dry, two coats are 100 um") {
  const FilmThickness wet = wet_film(square_metres_per_litre(8));
  CHECK(wet.in(micrometres) == Approx(125));
  CHECK(dry_film(wet, percent(40)).in(micrometres) == Approx(50));
  CHECK((2 * dry_film(wet, percent(40))).in(micrometres) == Approx(100));
}

// Source: typical figures of a waterborne wood finish's data sheet; the ratios are arithmetic.
TEST_CASE("80 um wet at 35 % solids is 28 um dry and 12.5 m2/L in theory") {
  CHECK(dry_film(micrometres(80), percent(35)).in(micrometres) == Approx(28));
  CHECK(m2_per_l(percent(35), micrometres(28)) == Approx(12.5));
  CHECK(10 / m2_per_l(percent(35), micrometres(28)) == Approx(0.80));
  CHECK(12 / m2_per_l(percent(35), micrometres(28)) == Approx(0.96));
}

// Source: typical figures of a moisture-cure polyurethane's data sheet.
TEST_CASE("30 and 22 % solids at 50 um dry go 6.0 and 4.4 m2 a litre") {
  CHECK(m2_per_l(percent(30), micrometres(50)) == Approx(6.0));
  CHECK(m2_per_l(percent(22), micrometres(50)) == Approx(4.4));
}

// Arithmetic: 35 / 0.45, 35 x 1.1 / 0.45, 450 / 35, and the exact foot and gallon (NIST SP 811).
TEST_CASE("35 um dry at 45 % solids takes 77.8 um wet, 85.6 um thinned by a tenth") {
  CHECK(prints_as(wet_film(square_metres_per_litre(12.853)).in(micrometres), 77.8, 0.01));
  CHECK(dry_film(micrometres(77.7778), percent(45)).in(micrometres) == Approx(35).epsilon(1e-5));
  CHECK(dry_film(micrometres(85.5556), percent(45), percent(10)).in(micrometres) ==
        Approx(35).epsilon(1e-5));
  CHECK(prints_as(m2_per_l(percent(45), micrometres(35)), 12.857, 0.0005));
  CHECK(prints_as(ft2_per_gal(percent(45), micrometres(35)), 523.9, 0.05));
}

// Arithmetic with the exact foot and the gallon of 231 cubic inches (NIST SP 811).
TEST_CASE("label spreads in square feet per gallon give these wet films") {
  struct Row {
    double ft2_per_gal, m2_per_l, um;
  };
  constexpr std::array rows{Row{200, 4.91, 203.7}, Row{250, 6.14, 163.0}, Row{300, 7.36, 135.8},
                            Row{350, 8.59, 116.4}, Row{400, 9.82, 101.9}, Row{450, 11.04, 90.5},
                            Row{500, 12.27, 81.5}, Row{550, 13.50, 74.1}, Row{600, 14.73, 67.9}};
  for (const Row& row : rows) {
    CAPTURE(row.ft2_per_gal);
    const SpreadRate spread = square_feet_per_us_gallon(row.ft2_per_gal);
    CHECK(prints_as(spread.in(square_metres_per_litre), row.m2_per_l, 0.005));
    CHECK(prints_as(wet_film(spread).in(micrometres), row.um, 0.05));
  }
  CHECK(wet_film(square_feet_per_us_gallon(160.4166667)).in(mils) == Approx(10));
}

// Source of the mix convention: a typical lacquer supplier's rule; the conversion is arithmetic.
TEST_CASE("thinner as a share of the mix is more as a share of the coating") {
  CHECK(thinner_per_coating(percent(5)).in(fraction) == Approx(10.0 / 190));
  CHECK(thinner_per_coating(percent(15)).in(fraction) == Approx(30.0 / 170));
  CHECK(thinner_per_coating(percent(50)).in(fraction) == Approx(1.0));
}

// The project's own arithmetic: half of 33.3 + 36.6 + 36.6 - 2 x 4 = 81.8 um.
TEST_CASE("three coats of oil varnish, the first thinned, count 81.8 um") {
  const FilmBuild build = film_build(oil_varnish(), {percent(10)}, 3, small_data().need_spread);
  CHECK(prints_as(build.wet.in(micrometres), 81.3, 0.05));
  CHECK(prints_as(build.first_dry.in(micrometres), 33.3, 0.05));
  CHECK(prints_as(build.later_dry.in(micrometres), 36.6, 0.05));
  CHECK(prints_as(build.counted_dry.in(micrometres), 81.8, 0.05));
}

TEST_CASE("a class that is not sanded between coats loses no film to sanding") {
  Coating lacquer = oil_varnish();
  const FilmBuild sanded = film_build(lacquer, {}, 4, small_data().need_spread);
  lacquer.needs_sanding_between = false;
  const FilmBuild melted = film_build(lacquer, {}, 4, small_data().need_spread);
  CHECK((melted.counted_dry - sanded.counted_dry).in(micrometres) == Approx(3 * 4));
}

TEST_CASE("harder wear asks for more coats, within what the class allows") {
  const NeedSpread figures = small_data().need_spread;
  CHECK(coats_for_aim(oil_varnish(), {percent(10)}, Wear::light, figures) == 2);
  CHECK(coats_for_aim(oil_varnish(), {percent(10)}, Wear::normal, figures) == 3);
  CHECK(coats_for_aim(oil_varnish(), {percent(10)}, Wear::hard, figures) == 4);
  Coating thick = oil_varnish();
  thick.coats_max.value = 2;
  CHECK(coats_for_aim(thick, {percent(10)}, Wear::hard, figures) == 2);
}

TEST_CASE("one coat fewer than advised would miss the aim by more than a tenth") {
  const NeedSpread figures = small_data().need_spread;
  for (const double solids : {25.0, 32.0, 45.0, 60.0}) {
    Coating coating = oil_varnish();
    coating.coats_min.value = 1;
    coating.coats_max.value = 20;
    coating.solids.value = percent(solids);
    const int coats = coats_for_aim(coating, {percent(10)}, Wear::normal, figures);
    const FilmThickness aim = coating.film_aim[1].value;
    CHECK(film_build(coating, {percent(10)}, coats, figures).counted_dry >= 0.9 * aim);
    CHECK(film_build(coating, {percent(10)}, coats - 1, figures).counted_dry < 0.9 * aim);
  }
}

TEST_CASE("a film just 10 % under its aim is not thin") {
  CHECK_FALSE(is_thin(micrometres(72), micrometres(80)));
  CHECK(is_thin(micrometres(71.9), micrometres(80)));
  CHECK_FALSE(is_thin(micrometres(0), micrometres(0)));
}
