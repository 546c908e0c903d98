#include "tackfree/base/elementary.hpp"

#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <limits>

namespace tackfree {

namespace {

// ln 2 in two parts: the first has 33 bits, so that its products with whole numbers are exact.
constexpr double ln2_high = 0x1.62e42feep-1, ln2_low = 1.90821492927058770002e-10;
constexpr double infinity = std::numeric_limits<double>::infinity();

constexpr int most_terms = 20;

/// 1 / n! from n = 0 on.
constexpr std::array<double, most_terms> inverse_factorials = [] {
  std::array<double, most_terms> all{1};
  double factorial = 1;
  for (int n = 1; n < most_terms; ++n) all[static_cast<std::size_t>(n)] = 1 / (factorial *= n);
  return all;
}();

/// Sum of x^n / n! from n = 1 to `last`: 14 for |x| up to 0.35, 19 for 0.7; the rest is under
/// 1e-17.
double exponential_series(double x, std::size_t last) {
  double sum = 0;
  for (std::size_t n = last; n > 1; --n) sum = x * (inverse_factorials[n] + sum);
  return x + x * sum;
}

/// log((1 + f) / (1 - f)) = 2 (f + f^3/3 + f^5/5 ...), for |f| up to 0.18.
double logarithm_series(double f) {
  constexpr std::array<double, 12> inverse{1.0 / 25, 1.0 / 23, 1.0 / 21, 1.0 / 19,
                                           1.0 / 17, 1.0 / 15, 1.0 / 13, 1.0 / 11,
                                           1.0 / 9,  1.0 / 7,  1.0 / 5,  1.0 / 3};
  const double square = f * f;
  double sum = 0;
  for (const double one_of : inverse) sum = square * (one_of + sum);
  return 2 * (f + f * sum);
}

double times_two_to(int twos, double x) {
  constexpr int bias = 1023, mantissa_bits = 52;
  if (twos <= -bias || twos > bias) return std::ldexp(x, twos);  // many times slower
  return x * std::bit_cast<double>(static_cast<std::uint64_t>(twos + bias) << mantissa_bits);
}

}  // namespace

double exponential(double x) {
  if (std::isnan(x)) return x;
  constexpr double most = 709.79, least = -745.2;
  if (x > most) return infinity;
  if (x < least) return 0;
  const double twos = std::floor(x / (ln2_high + ln2_low) + 0.5);
  const double rest = (x - twos * ln2_high) - twos * ln2_low;
  return times_two_to(static_cast<int>(twos), 1 + exponential_series(rest, 14));
}

double exponential_less_one(double x) {
  constexpr double near_zero = 0.7;
  return std::abs(x) < near_zero ? exponential_series(x, 19) : exponential(x) - 1;
}

double logarithm(double x) {
  if (std::isnan(x) || x < 0) return std::numeric_limits<double>::quiet_NaN();
  if (x == 0) return -infinity;
  if (x == infinity) return x;
  constexpr double half_root = 0.70710678118654752440;
  int twos = 0;
  double share = std::frexp(x, &twos);  // from 0.5 to 1
  if (share < half_root) {
    share *= 2;
    --twos;
  }
  const double f = (share - 1) / (share + 1);
  return twos * ln2_high + (twos * ln2_low + logarithm_series(f));
}

double logarithm_of_one_plus(double x) {
  constexpr double near_zero = 0.35;
  return std::abs(x) < near_zero ? logarithm_series(x / (2 + x)) : logarithm(1 + x);
}

double power(double base, double exponent) {
  if (exponent == 0 || base == 1) return 1;
  if (exponent == 1) return base;
  return exponential(exponent * logarithm(base));
}

double power_of_ten(int exponent) {
  double power = 1;  // exact up to here, and a quotient of exact numbers is the nearest one
  for (int i = 0; i < std::abs(exponent); ++i) power *= 10;
  return exponent < 0 ? 1 / power : power;
}

}  // namespace tackfree
