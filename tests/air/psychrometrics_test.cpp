#include "tackfree/air/psychrometrics.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

double saturation_pa(double t) { return saturation_pressure(celsius(t)).in(pascals); }
double dew_c(double t, double rh_pct) {
  return dew_point(vapour_pressure(celsius(t), humidity_percent(rh_pct))).in_celsius();
}
double relative_difference(double found, double expected) {
  return std::abs(found / expected - 1.0);
}

struct PressureRow {
  double t, pascal;
};
struct DewRow {
  double t, rh_pct, dew;
};

}  // namespace

TEST_CASE("Saturation pressure agrees with the ASHRAE table") {
  // Source: ASHRAE Handbook Fundamentals 2017, ch. 1, table 3 (rows over liquid water), as quoted
  // in the tests of PsychroLib. Tolerance: 300 ppm, what those tests allow between table and
  // formula.
  const std::vector<PressureRow> rows = {{5, 872.6}, {25, 3169.7}, {50, 12351.3}, {100, 101418.0}};
  for (const auto& r : rows) {
    CAPTURE(r.t);
    CHECK(relative_difference(saturation_pa(r.t), r.pascal) < 3e-4);
  }
}

TEST_CASE("Saturation pressure agrees with PsychroLib above the triple point") {
  // Source: PsychroLib 1.1.1 (npm), GetSatVapPres, run. Tolerance: 1e-6 relative; the same formula
  // with the values printed to 1e-6 Pa. At and below 0.01 C PsychroLib turns to ice, this does not.
  const std::vector<PressureRow> rows = {
      {0.02, 612.101475}, {5, 872.486654},   {10, 1227.995275},   {15, 1705.447794},
      {18, 2064.291639},  {20, 2338.803700}, {21.1, 2502.999537}, {23, 2810.441920},
      {25, 3169.216470},  {28, 3782.206968}, {30, 4246.030244},   {35, 5627.819447},
      {40, 7383.460009},  {45, 9593.219934}, {50, 12349.856467}};
  for (const auto& r : rows) {
    CAPTURE(r.t);
    CHECK(relative_difference(saturation_pa(r.t), r.pascal) < 1e-6);
  }
}

TEST_CASE("Saturation pressure agrees with the IAPWS line over liquid water, supercooled too") {
  // Source: IAPWS SR1-86(1992), saturation line of liquid water, its coefficients from memory (they
  // return the published 611.657 Pa at 273.16 K and 101 325 Pa at 373.1243 K).
  // Tolerance: 2.5e-4 relative. The two formulas are independent and differ by up to 2.1e-4, which
  // is 4 mK of dew point; a slip into the ice branch would be 1 % at -1 C, a Magnus form 1.5e-3.
  const std::vector<PressureRow> rows = {
      {-20, 125.6040}, {-15, 191.4040},  {-10, 286.5331},  {-5, 421.8112},    {-0.01, 610.7689},
      {0, 611.2128},   {0.01, 611.6571}, {0.02, 612.1016}, {5, 872.5302},     {10, 1228.1122},
      {15, 1705.6770}, {18, 2064.6109},  {20, 2339.1937},  {21.1, 2503.4324}, {23, 2810.9554},
      {25, 3169.8245}, {28, 3782.9761},  {30, 4246.9199},  {35, 5629.0574},   {40, 7385.1105},
      {45, 9595.3378}, {50, 12352.4789}};
  for (const auto& r : rows) {
    CAPTURE(r.t);
    CHECK(relative_difference(saturation_pa(r.t), r.pascal) < 2.5e-4);
  }
}

TEST_CASE("Below freezing the liquid branch of the formula goes on") {
  // Source: the formula itself, computed apart from this program. Tolerance: the printed 1e-4 Pa.
  const std::vector<PressureRow> rows = {
      {-20, 125.6292}, {-15, 191.4340}, {-10, 286.5635}, {-5, 421.8335}, {0, 611.2129}};
  for (const auto& r : rows) {
    CAPTURE(r.t);
    CHECK(std::abs(saturation_pa(r.t) - r.pascal) < 1e-4);
  }
}

TEST_CASE("Dew points agree with PsychroLib, and below freezing with the liquid branch") {
  // Source: PsychroLib 1.1.1 (npm), run, at 101 325 Pa; for -10 and 0 C, where PsychroLib gives a
  // frost point, the liquid branch computed apart from this program. Tolerance: 2e-5 K, twice the
  // printed digit.
  const std::vector<DewRow> rows = {
      {-10, 80, -12.79208}, {0, 80, -3.03343},    {5, 85, 2.69149},   {10, 50, 0.06259},
      {10, 80, 6.71301},    {10, 85, 7.59750},    {15, 50, 4.67192},  {15, 70, 9.57935},
      {15, 85, 12.50123},   {20, 30, 1.91427},    {20, 50, 9.27239},  {20, 60, 12.00747},
      {20, 65, 13.22722},   {20, 70, 14.36708},   {20, 80, 16.44706}, {20, 85, 17.40267},
      {20, 90, 18.31020},   {21.1, 65, 14.27043}, {23, 50, 12.02841}, {23, 85, 20.34243},
      {25, 50, 13.86397},   {25, 60, 16.70113},   {25, 85, 22.30180}, {30, 40, 14.93583},
      {30, 55, 19.97591},   {30, 70, 23.92789},   {30, 85, 27.19861}, {35, 50, 23.02037},
      {40, 30, 19.12524},   {40, 60, 30.74123}};
  for (const auto& r : rows) {
    CAPTURE(r.t);
    CAPTURE(r.rh_pct);
    CHECK(std::abs(dew_c(r.t, r.rh_pct) - r.dew) < 2e-5);
  }
}

TEST_CASE("Vapour pressures and what is missing to saturation agree with PsychroLib") {
  // Source: PsychroLib 1.1.1 (npm), run. Tolerance: 1e-4 Pa, the printed digit; the rows at -10 and
  // 0 C are left out, where PsychroLib has ice.
  struct Row {
    double t, rh_pct, vapour, deficit;
  };
  const std::vector<Row> rows = {{5, 85, 741.6137, 130.8730},    {10, 50, 613.9976, 613.9976},
                                 {10, 80, 982.3962, 245.5991},   {10, 85, 1043.7960, 184.1993},
                                 {15, 50, 852.7239, 852.7239},   {15, 70, 1193.8135, 511.6343},
                                 {15, 85, 1449.6306, 255.8172},  {20, 30, 701.6411, 1637.1626},
                                 {20, 50, 1169.4019, 1169.4019}, {20, 60, 1403.2822, 935.5215},
                                 {20, 65, 1520.2224, 818.5813},  {20, 70, 1637.1626, 701.6411},
                                 {20, 80, 1871.0430, 467.7607},  {20, 85, 1987.9831, 350.8206},
                                 {20, 90, 2104.9233, 233.8804},  {21.1, 65, 1626.9497, 876.0498},
                                 {23, 50, 1405.2210, 1405.2210}, {23, 85, 2388.8756, 421.5663},
                                 {25, 50, 1584.6082, 1584.6082}, {25, 60, 1901.5299, 1267.6866},
                                 {25, 85, 2693.8340, 475.3825},  {30, 40, 1698.4121, 2547.6181},
                                 {30, 55, 2335.3166, 1910.7136}, {30, 70, 2972.2212, 1273.8091},
                                 {30, 85, 3609.1257, 636.9045},  {35, 50, 2813.9097, 2813.9097},
                                 {40, 30, 2215.0380, 5168.4220}, {40, 60, 4430.0760, 2953.3840}};
  for (const Row& r : rows) {
    CAPTURE(r.t);
    CAPTURE(r.rh_pct);
    const Pressure vapour = vapour_pressure(celsius(r.t), humidity_percent(r.rh_pct));
    CHECK(std::abs(vapour.in(pascals)-r.vapour) < 1e-4);
    CHECK(std::abs(saturation_pa(r.t) - vapour.in(pascals)-r.deficit) < 1e-4);
  }
}

TEST_CASE("Air of 40 C with a dew point of 7 C has the humidity of the handbook's example") {
  // Source: ASHRAE Handbook Fundamentals 2017, ch. 1, example 1: 14 %. Tolerance: half a percent.
  const double found =
      relative_humidity(celsius(40), saturation_pressure(celsius(7))).in(humidity_percent);
  CHECK(std::abs(found - 14) < 0.5);
}

TEST_CASE("Dew points at 20 C agree with the table painters carry") {
  // Source: dew-point tables as in DIN 4108 and ISO 8502-4, row 20 C, from memory. Tolerance:
  // 0.05 K, half the printed digit.
  const std::vector<DewRow> rows = {{20, 30, 1.9},  {20, 40, 6.0},  {20, 50, 9.3}, {20, 60, 12.0},
                                    {20, 70, 14.4}, {20, 80, 16.4}, {20, 90, 18.3}};
  for (const auto& r : rows) {
    CAPTURE(r.rh_pct);
    CHECK(std::abs(dew_c(r.t, r.rh_pct) - r.dew) < 0.05);
  }
}

TEST_CASE("Dew points agree with a printed chart in whole degrees Fahrenheit") {
  // Source: a dew-point chart of common practice. Tolerance: 1.2 F; the chart cuts to whole degrees
  // (up to 1 F) and is rounded along its way.
  const std::vector<DewRow> rows = {{70, 65, 57}, {70, 50, 50}, {80, 85, 75},
                                    {60, 85, 55}, {50, 50, 31}, {90, 40, 62},
                                    {80, 50, 59}, {60, 60, 45}, {100, 70, 88}};
  for (const auto& r : rows) {
    CAPTURE(r.t);
    CAPTURE(r.rh_pct);
    const double found =
        dew_point(vapour_pressure(fahrenheit(r.t), humidity_percent(r.rh_pct))).in_fahrenheit();
    CHECK(std::abs(found - r.dew) < 1.2);
  }
}

TEST_CASE("The dew point turns saturation pressure round from -50 to 100 C") {
  for (int t = -50; t <= 100; ++t) {
    CAPTURE(t);
    CHECK(std::abs(dew_point(saturation_pressure(celsius(t))).in_celsius() - t) < 1e-8);
  }
}

TEST_CASE("Relative humidity turns vapour pressure round and is never above 1") {
  const auto vapour = vapour_pressure(celsius(20), humidity_percent(65));
  CHECK(relative_humidity(celsius(20), vapour).in(humidity_percent) == doctest::Approx(65));
  CHECK(relative_humidity(celsius(10), vapour).in(humidity_percent) == 100.0);
}
