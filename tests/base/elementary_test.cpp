#include "tackfree/base/elementary.hpp"

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

#include "effort.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// Units in the last place between two numbers of one sign.
std::int64_t ulps(double a, double b) {
  return std::abs(std::bit_cast<std::int64_t>(a) - std::bit_cast<std::int64_t>(b));
}

}  // namespace

// The C library's results are right to under one unit in the last place (GNU C Library manual,
// "Errors in Math Functions"), so that two are the most that a result right to one may be off.
TEST_CASE("exp and log are within two units in the last place of the C library's") {
  std::mt19937_64 random(20261130);
  std::uniform_real_distribution<double> exponent(-700, 700), small(-0.4, 0.4);
  for (int i = 0; i < testing::cases(20'000); ++i) {
    const double x = exponent(random), y = small(random);
    CHECK(ulps(exponential(x), std::exp(x)) <= 3);
    CHECK(ulps(exponential(y), std::exp(y)) <= 3);
    CHECK(ulps(exponential_less_one(y), std::expm1(y)) <= 3);
    CHECK(ulps(logarithm_of_one_plus(y), std::log1p(y)) <= 3);
    CHECK(ulps(logarithm(std::exp(x)), std::log(std::exp(x))) <= 3);
    CHECK(ulps(logarithm(1 + y), std::log(1 + y)) <= 3);
  }
}

TEST_CASE("powers as the reckoning has them are within eight units in the last place") {
  std::mt19937_64 random(20261201);
  std::uniform_real_distribution<double> base(0.05, 20), exponent(-2.5, 2.5);
  for (int i = 0; i < testing::cases(20'000); ++i) {
    const double b = base(random), e = exponent(random);
    CHECK(ulps(power(b, e), std::pow(b, e)) <= 8);
  }
  CHECK(power(7.3, 1) == 7.3);
  CHECK(power(7.3, 0) == 1);
  CHECK(power(1, 1e9) == 1);
  CHECK(power(0, 2) == 0);
}

// NIST, Digital Library of Mathematical Functions, 4.2.11 and 3.12: e and ln 10 (from memory).
TEST_CASE("known values to all digits that a double holds") {
  CHECK(exponential(0) == 1);
  CHECK(ulps(exponential(1), 2.718281828459045235360287) <= 1);
  CHECK(logarithm(1) == 0);
  CHECK(ulps(logarithm(10), 2.302585092994045684017991) <= 1);
  CHECK(logarithm(2) == 0.693147180559945309417232);
  CHECK(exponential_less_one(0) == 0);
  CHECK(logarithm_of_one_plus(0) == 0);
}

TEST_CASE("the ends of the range are what the C library says") {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  CHECK(exponential(710) == infinity);
  CHECK(exponential(-746) == 0);
  CHECK(exponential(709.7) == doctest::Approx(std::exp(709.7)));
  CHECK(exponential(-745) == std::exp(-745.0));
  CHECK(logarithm(0) == -infinity);
  CHECK(std::isnan(logarithm(-1)));
  CHECK(std::isnan(exponential(std::nan(""))));
  CHECK(logarithm(infinity) == infinity);
  CHECK(ulps(logarithm(5e-324), std::log(5e-324)) <= 3);
}

TEST_CASE("powers of ten are the numbers that their digits are read as") {
  CHECK(power_of_ten(0) == 1);
  CHECK(power_of_ten(3) == 1000);
  CHECK(power_of_ten(-3) == 1e-3);
  CHECK(power_of_ten(22) == 1e22);
  CHECK(power_of_ten(-9) == 1e-9);
}
