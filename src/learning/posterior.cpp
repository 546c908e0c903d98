#include "tackfree/learning/posterior.hpp"

#include "tackfree/base/elementary.hpp"

#include <cmath>
#include <numbers>

namespace tackfree {

namespace {

constexpr double asked_about = 2.5;

}  // namespace

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): three bare numbers by their nature
double posterior_mean(double prior_mean, double prior_sd, double reading_sd,
                      const std::vector<double>& readings) {
  const double prior_precision = 1.0 / (prior_sd * prior_sd);
  const double reading_precision = 1.0 / (reading_sd * reading_sd);
  double precision = prior_precision;
  double weighted = prior_precision * prior_mean;
  for (const double reading : readings) {
    precision += reading_precision;
    weighted += reading_precision * reading;
  }
  return weighted / precision;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): bare numbers by their nature
double posterior_sd(double prior_sd, double reading_sd, int count) {
  return 1.0 / std::sqrt(1.0 / (prior_sd * prior_sd) + count / (reading_sd * reading_sd));
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): bare numbers by their nature
bool is_outlier(double prior_sd, double reading_sd, double reading) {
  return std::abs(reading) > asked_about * std::sqrt(prior_sd * prior_sd + reading_sd * reading_sd);
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): bare numbers by their nature
double mean_over(double mean, double sd, double least) {
  const double z = (least - mean) / sd;
  const double over = std::erfc(z / std::numbers::sqrt2) / 2;
  // Far out the ratio comes near z, and both of its parts near nothing.
  constexpr double far_out = 8;
  if (z > far_out) return least + sd / z;
  const double density = exponential(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
  return mean + sd * density / over;
}

}  // namespace tackfree
