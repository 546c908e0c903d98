#include "tackfree/learning/posterior.hpp"

#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

/// The posterior mean by adding up prior x likelihood over a fine grid: an independent way.
double integrated_mean(double prior_mean, double prior_sd, double reading_sd,
                       const std::vector<double>& readings) {
  constexpr int steps = 40000;
  const double low = prior_mean - 12 * prior_sd;
  const double width = 24 * prior_sd / steps;
  double mass = 0;
  double moment = 0;
  for (int i = 0; i < steps; ++i) {
    const double mean = low + (i + 0.5) * width;
    double exponent = std::pow((mean - prior_mean) / prior_sd, 2);
    for (const double reading : readings) exponent += std::pow((reading - mean) / reading_sd, 2);
    const double weight = std::exp(-exponent / 2);
    mass += weight;
    moment += weight * mean;
  }
  return moment / mass;
}

}  // namespace

TEST_CASE("the posterior mean is the integral of prior times likelihood") {
  const std::vector<std::vector<double>> logs{{}, {0.3}, {0.1, -0.2}, {0.05, 0.15, 0.25, 0.1}};
  for (const auto& readings : logs)
    for (const double prior_mean : {0.0, 0.2}) {
      CAPTURE(readings.size());
      CHECK(posterior_mean(prior_mean, 0.15, 0.10, readings) ==
            Approx(integrated_mean(prior_mean, 0.15, 0.10, readings)).epsilon(1e-6));
    }
}

// Source of the closed form: A. Gelman et al., Bayesian Data Analysis, 3rd ed., sec. 2.5 (from
// memory): (mu0/s0^2 + n ybar/s^2) / (1/s0^2 + n/s^2). The numbers are this test's own.
TEST_CASE("the posterior mean is the precision-weighted mean of prior and readings") {
  const double expected = (1.0 / 0.04 + (1.2 + 1.5 + 0.9) / 0.01) / (1 / 0.04 + 3 / 0.01);
  CHECK(posterior_mean(1.0, 0.2, 0.1, {1.2, 1.5, 0.9}) == Approx(expected).epsilon(1e-12));
  CHECK(posterior_mean(1.0, 0.2, 0.1, {}) == 1.0);
}

// The exercise on students' weights in the same book (sec. 2.11, exercise 8; from memory): prior
// N(180, 40^2), reading spread 20, mean of n readings 150: posterior mean 150.7 and spread 6.25 for
// n = 10, 150.07 and 1.997 for n = 100.
TEST_CASE("the weights of ten and of a hundred students come to the textbook's means") {
  CHECK(posterior_mean(180, 40, 20, std::vector<double>(10, 150)) == Approx(150.73).epsilon(1e-4));
  CHECK(posterior_mean(180, 40, 20, std::vector<double>(100, 150)) == Approx(150.07).epsilon(1e-4));
  CHECK(posterior_sd(40, 20, 10) == Approx(6.25).epsilon(1e-3));
  CHECK(posterior_sd(40, 20, 100) == Approx(1.997).epsilon(1e-3));
  CHECK(posterior_sd(40, 20, 0) == Approx(40));
}

TEST_CASE("readings taken in two goes teach the same as all at once") {
  const double first = posterior_mean(0.0, 0.15, 0.10, {0.2, 0.1});
  const double narrowed = posterior_sd(0.15, 0.10, 2);
  CHECK(narrowed == Approx(std::sqrt(1 / (1 / 0.0225 + 2 / 0.01))));
  CHECK(posterior_mean(first, narrowed, 0.10, {0.3}) ==
        Approx(posterior_mean(0.0, 0.15, 0.10, {0.2, 0.1, 0.3})));
}

// Of a standard normal, half the values lie over 0 and their mean is sqrt(2 / pi).
TEST_CASE(
    "the mean over a bound is that of the half normal at 0, and far out just over the bound") {
  CHECK(mean_over(0, 1, 0) == Approx(std::sqrt(2 / std::numbers::pi)).epsilon(1e-9));
  CHECK(mean_over(2, 3, 2) == Approx(2 + 3 * std::sqrt(2 / std::numbers::pi)).epsilon(1e-9));
  CHECK(mean_over(0, 1, -8) == Approx(0).epsilon(1e-9));
  for (double bound = -3; bound < 20; bound += 0.25) {
    CAPTURE(bound);
    CHECK(mean_over(0, 1, bound) > bound);
    CHECK(mean_over(0, 1, bound + 0.25) > mean_over(0, 1, bound));
  }
  CHECK(mean_over(0, 1, 20) == Approx(20.05).epsilon(1e-3));
}

TEST_CASE("a reading is asked about from two and a half spreads on") {
  const double spread = std::hypot(0.15, 0.30);
  CHECK_FALSE(is_outlier(0.15, 0.30, 2.49 * spread));
  CHECK(is_outlier(0.15, 0.30, 2.51 * spread));
  CHECK(is_outlier(0.15, 0.30, -2.51 * spread));
}
