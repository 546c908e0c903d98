// Elementary functions: exp, log and pow with the same bits on every processor.
#pragma once

namespace tackfree {

/// C libraries choose other code for these on processors that multiply and add in one step, and
/// some results then differ in the last digit, which moves the end of a wait now and then. Here
/// they are sums and products in a fixed order, compiled without contraction. Each is right to
/// three units in the last place; a power to about as many more as |exponent x log(base)| says.

/// e to the `x`: 0 far below, infinity above 709.78.
double exponential(double x);

/// The same less one, exact near 0 too.
double exponential_less_one(double x);

/// The natural logarithm: minus infinity of 0, not a number below.
double logarithm(double x);

/// Of 1 + `x`, exact near 0 too.
double logarithm_of_one_plus(double x);

/// `base` to the `exponent`, of a base that is not negative; 1 where the exponent is 0.
double power(double base, double exponent);

/// 10 to the `exponent`, -22 to 22: the nearest number that a double holds.
double power_of_ten(int exponent);

}  // namespace tackfree
