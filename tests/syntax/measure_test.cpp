#include "tackfree/syntax/measure.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace tackfree;

namespace {

double mm(std::string_view text) {
  const Reading<Length> reading = read_length(text);
  INFO(text << ": " << reading.wanted);
  REQUIRE(reading.value);
  return reading.value->in(millimetres);
}

double ml(std::string_view text) {
  const Reading<Volume> reading = read_volume(text);
  INFO(text << ": " << reading.wanted);
  REQUIRE(reading.value);
  return reading.value->in(millilitres);
}

}  // namespace

// Source: NIST SP 811, appendix B.6: 1 in = 25.4 mm and 1 ft = 304.8 mm, exactly. The tolerance is
// the rounding of a few operations on doubles.
TEST_CASE("lengths are read as people write them, exactly") {
  struct Row {
    const char* text;
    double mm;
  };
  const Row rows[] = {
      {"48 1/4 in", 1225.55}, {"48-1/4\"", 1225.55},    {"48 1/4 inches", 1225.55},
      {"48.25in.", 1225.55},  {"48\u00BC in", 1225.55}, {"4 ft 2 1/2 in", 1282.7},
      {"4'2.5\"", 1282.7},    {"4' 2-1/2\"", 1282.7},   {"4\u2032 2\u00BD\u2033", 1282.7},
      {"4'2.5''", 1282.7},    {"4 ft", 1219.2},         {"1 foot 0 in", 304.8},
      {"1 yd 1 ft", 1219.2},  {"3/4 in", 19.05},        {".5 in", 12.7},
      {"1226 mm", 1226},      {"1226mm", 1226},         {"1.226 m", 1226},
      {"122.6 cm", 1226},     {"1 m 22 cm 6 mm", 1226}, {" 18 MM ", 18}};
  for (const Row& row : rows) CHECK(mm(row.text) == doctest::Approx(row.mm).epsilon(1e-12));
}

TEST_CASE("a bare number counts in the unit of its column, a unit of its own goes first") {
  CHECK(read_length("48 1/4", inches).value == inches(48.25));
  CHECK(read_length("1226", millimetres).value == millimetres(1226));
  CHECK(read_length("2", feet).value == feet(2));
  CHECK(read_length("30 cm", inches).value == centimetres(30));
  CHECK_FALSE(read_length("48 1/4").value);
}

TEST_CASE("a column's head names its unit after the last underscore") {
  CHECK(head_unit("length_in").name == "length");
  CHECK(head_unit("length_in").unit->si_per_unit() == 0.0254);
  CHECK(head_unit("length_mm").unit->si_per_unit() == 0.001);
  CHECK(head_unit("length_cm").unit->si_per_unit() == 0.01);
  CHECK(head_unit("length_ft").unit->si_per_unit() == 0.3048);
  CHECK(head_unit("length_m").unit->si_per_unit() == 1.0);
  CHECK_FALSE(head_unit("length").unit);
  CHECK(head_unit("length_furlong").name == "length_furlong");
}

// Source: NIST SP 811, appendix B.6: the US gallon is 231 in3 = 3.785411784 L, exactly.
TEST_CASE("volumes of tins are US measures or metric ones") {
  CHECK(ml("1 gal") == doctest::Approx(3785.411784).epsilon(1e-12));
  CHECK(ml("1 qt") == doctest::Approx(946.352946).epsilon(1e-12));
  CHECK(ml("1 pt") == doctest::Approx(473.176473).epsilon(1e-12));
  CHECK(ml("1/2 pt") == doctest::Approx(236.5882365).epsilon(1e-12));
  CHECK(ml("32 fl oz") == doctest::Approx(946.352946).epsilon(1e-12));
  CHECK(ml("32 fl. oz.") == doctest::Approx(946.352946).epsilon(1e-12));
  CHECK(ml("750 ml") == doctest::Approx(750).epsilon(1e-12));
  CHECK(ml("75 cl") == doctest::Approx(750).epsilon(1e-12));
  CHECK(ml("2.5 L") == doctest::Approx(2500).epsilon(1e-12));
  CHECK(ml("1000 ft3") == doctest::Approx(28316846.592).epsilon(1e-12));
  CHECK(ml("90 m\u00B3") == doctest::Approx(90e6).epsilon(1e-12));
}

// Source: NIST SP 811, appendix B.6: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 yd = 0.9144 m, exactly.
TEST_CASE("areas are read with their unit, written either way") {
  struct Row {
    const char* text;
    double m2;
  };
  const Row rows[] = {{"2.4 m2", 2.4},
                      {"2.4 m\u00B2", 2.4},
                      {"1 sq ft", 0.09290304},
                      {"26 ft2", 26 * 0.09290304},
                      {"144 sq. in.", 0.09290304},
                      {"1 sq yd", 0.83612736},
                      {"1/2 sq m", 0.5},
                      {"3500 cm2", 0.35},
                      {"20000mm2", 0.02}};
  for (const Row& row : rows) {
    INFO(std::string(row.text));
    const Reading<Area> reading = read_area(row.text);
    REQUIRE(reading.value);
    CHECK(reading.value->in(square_metres) == doctest::Approx(row.m2).epsilon(1e-12));
  }
  CHECK(read_area("3", square_metres).value == square_metres(3));
  for (const char* bad : {"3", "3 m", "-1 m2", "0 m2", "1e9 m2"}) CHECK_FALSE(read_area(bad).value);
}

TEST_CASE("a length in feet and inches without a blank is no area") {
  CHECK(mm("4ft2in") == doctest::Approx(1270));
}

TEST_CASE("what is written with each unit is read back as it was") {
  std::mt19937 random(5);
  for (int i = 0; i < 500; ++i) {
    const double number =
        std::round(std::uniform_real_distribution<double>(1, 900)(random) * 1000) / 1000;
    const std::string text = fmt::format("{}", number);
    CHECK(mm(text + " mm") == doctest::Approx(number).epsilon(1e-12));
    CHECK(mm(text + " in") == doctest::Approx(number * 25.4).epsilon(1e-12));
    CHECK(mm(text + " cm") / 10 == doctest::Approx(number).epsilon(1e-12));
    CHECK(read_length(text + " in").value->in(inches) == doctest::Approx(number).epsilon(1e-12));
    CHECK(ml(text + " gal") / 3785.411784 == doctest::Approx(number).epsilon(1e-12));
    CHECK(read_volume(text + " qt").value->in(us_quarts) == doctest::Approx(number).epsilon(1e-12));
    CHECK(read_area(text + " sq ft").value->in(square_feet) ==
          doctest::Approx(number).epsilon(1e-12));
  }
}

TEST_CASE("every sixteenth of an inch is the same as a fraction, a decimal and millimetres") {
  for (int sixteenths = 1; sixteenths < 16 * 40; ++sixteenths) {
    const double exact = sixteenths * 25.4 / 16;
    const int whole = sixteenths / 16, rest = sixteenths % 16;
    const std::string in_parts = rest == 0    ? fmt::format("{} in", whole)
                                 : whole == 0 ? fmt::format("{}/16 in", rest)
                                              : fmt::format("{} {}/16 in", whole, rest);
    CHECK(mm(in_parts) == doctest::Approx(exact).epsilon(1e-13));
    CHECK(mm(fmt::format("{} in", sixteenths / 16.0)) == doctest::Approx(exact).epsilon(1e-13));
    CHECK(mm(fmt::format("{} mm", exact)) == doctest::Approx(exact).epsilon(1e-13));
  }
}

TEST_CASE("decimal commas become points; a point between thousands is not guessed at") {
  CHECK(with_decimal_points("1226,5 mm") == "1226.5 mm");
  CHECK(with_decimal_points("48 1/4 in") == "48 1/4 in");
  CHECK(with_decimal_points("0.125") == "0.125");
  CHECK(with_decimal_points("48.25") == "48.25");
  CHECK_FALSE(with_decimal_points("1.226 mm"));
  CHECK_FALSE(with_decimal_points("10.500"));
  CHECK_FALSE(with_decimal_points("1.226,5"));
}

TEST_CASE("heads are looked up without case, blanks and brackets") {
  CHECK(plain_head("Length (mm)") == "length_mm");
  CHECK(plain_head(" Area [m\u00B2] ") == "area_m2");
  CHECK(plain_head("set back  top") == "set_back_top");
  CHECK(plain_head("cut-out") == "cut-out");
  CHECK(head_unit("area_ft2").area_unit->si_per_unit() == doctest::Approx(0.09290304));
  CHECK(head_unit("area_ft2").name == "area");
}

TEST_CASE("what is no size is refused with what would be right") {
  struct Row {
    const char* text;
    const char* wanted;
  };
  const Row rows[] = {{"-5 in", "without a minus sign"},
                      {"0 in", "over 0"},
                      {"0", "over 0"},
                      {"1e400 mm", "smaller number"},
                      {"1e30 mm", "0.01 mm to 100 m"},
                      {"0.001 mm", "0.01 mm to 100 m"},
                      {"nan", "a length with its unit"},
                      {"inf mm", "a length with its unit"},
                      {"", "a length with its unit"},
                      {"long", "a length with its unit"},
                      {"12 parsecs", "a length with its unit"},
                      {"1,226 mm", "no commas"},
                      {"12 1/0 in", "divided by 0"},
                      {"4 in 2 ft", "larger unit first"},
                      {"4 ft 2 ft", "larger unit first"},
                      {"4'2", "a length with its unit"},
                      {"48 in x 3", "a length with its unit"},
                      {"1/2/3 in", "a length with its unit"},
                      {"5 in -2 in", "without a minus sign"}};
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const Reading<Length> reading = read_length(row.text, millimetres);
    CHECK_FALSE(reading.value);
    CHECK(reading.wanted.find(row.wanted) != std::string::npos);
  }
  CHECK_FALSE(read_volume("1").value);
  CHECK_FALSE(read_volume("1 in").value);
  CHECK_FALSE(read_volume("0 gal").value);
  CHECK_FALSE(read_volume("1 oz").value);
}
