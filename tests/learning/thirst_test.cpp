#include "tackfree/learning/thirst.hpp"

#include <cmath>

#include "volume/small_job.hpp"
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

Job with_log(const std::vector<double>& ratios) {
  Job job = small_job();
  for (const double ratio : ratios)
    job.history.coats.push_back(
        {.coating = "varnish", .at = {}, .expected = litres(0.2), .used = litres(0.2 * ratio)});
  return job;
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

TEST_CASE("readings taken in two goes teach the same as all at once") {
  const double first = posterior_mean(0.0, 0.15, 0.10, {0.2, 0.1});
  const double narrowed = std::sqrt(1 / (1 / 0.0225 + 2 / 0.01));
  CHECK(posterior_mean(first, narrowed, 0.10, {0.3}) ==
        Approx(posterior_mean(0.0, 0.15, 0.10, {0.2, 0.1, 0.3})));
}

TEST_CASE("an empty log teaches nothing") {
  CHECK(thirst_factors(with_log({})) == std::vector<double>{1.0});
}

TEST_CASE("what the log says is believed more with each coat, and never overshot") {
  double before = 1.0;
  for (std::size_t coats = 1; coats <= 6; ++coats) {
    const double now = thirst_factors(with_log(std::vector<double>(coats, 1.3))).at(0);
    CHECK(now > before);
    CHECK(now < 1.3);
    before = now;
  }
  CHECK(before > 1.25);
}

TEST_CASE("one coat of 30 % more moves the factor by the brush's prior against the reading") {
  const double weight = (1 / 0.01) / (1 / 0.01 + 1 / 0.0225);
  CHECK(thirst_factors(with_log({1.3})).at(0) == Approx(std::pow(1.3, weight)));
}

TEST_CASE("a tin teaches only about its own coating, and unusable readings are left out") {
  Job job = with_log({1.3});
  job.coatings.push_back(waterborne());
  job.history.coats.push_back(
      {.coating = "waterborne", .at = {}, .expected = litres(0.2), .used = litres(0.4)});
  job.history.coats.push_back(
      {.coating = "varnish", .at = {}, .expected = litres(0), .used = litres(0.4)});
  const std::vector<double> factors = thirst_factors(job);
  CHECK(factors.at(0) == Approx(thirst_factors(with_log({1.3})).at(0)));
  CHECK(factors.at(1) == 1.0);  // no system uses it
}
