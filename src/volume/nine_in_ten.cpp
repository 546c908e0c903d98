#include "tackfree/volume/nine_in_ten.hpp"

#include "tackfree/base/elementary.hpp"

#include <cmath>

namespace tackfree {

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): three bare numbers by their nature
double nine_in_ten_factor(double sigma, double sigma_absorption, double first_share) {
  // Source: the 90th percentile of the standard normal distribution.
  constexpr double z = 1.2815515655446004;
  // The need is A x (share x B + 1 - share), A and B log-normal with mean 1. Its mean is 1 and its
  // mean square exp(sigma^2) x (1 + share^2 x (exp(sigma_absorption^2) - 1)); the log-normal of the
  // same two moments is exact where the share is 0 or 1.
  const double variance =
      sigma * sigma +
      logarithm_of_one_plus(first_share * first_share *
                            exponential_less_one(sigma_absorption * sigma_absorption));
  return exponential(z * std::sqrt(variance) - variance / 2);
}

}  // namespace tackfree
