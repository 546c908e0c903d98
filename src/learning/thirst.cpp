#include "tackfree/learning/thirst.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {
namespace {

/// Log-sd of one reading of a tin's level. Source: assumption of this project.
constexpr double reading_sd = 0.10;

/// The widest method spread with which the job uses the coating; nothing when no system does.
std::optional<double> prior_sd(const Job& job, const std::string& coating) {
  std::optional<double> widest;
  for (const FinishSystem& system : job.systems)
    for (const SystemStep& step : system.steps) {
      if (step.coating != coating) continue;
      const auto method = std::ranges::find(job.data.methods, step.method, &Method::key);
      if (method != job.data.methods.end())
        widest = std::max(widest.value_or(0.0), method->need_sigma.value);
    }
  return widest;
}

std::vector<double> readings(const History& history, const std::string& coating) {
  std::vector<double> logarithms;
  for (const CoatPutOn& coat : history.coats)
    if (coat.coating == coating && coat.used > Volume{} && coat.expected > Volume{})
      logarithms.push_back(std::log(coat.used / coat.expected));
  return logarithms;
}

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

std::vector<double> thirst_factors(const Job& job) {
  std::vector<double> factors;
  for (const Coating& coating : job.coatings) {
    const std::optional<double> spread = prior_sd(job, coating.name);
    const bool learns = spread && *spread > 0;
    factors.push_back(learns ? std::exp(posterior_mean(0.0, *spread, reading_sd,
                                                       readings(job.history, coating.name)))
                             : 1.0);
  }
  return factors;
}

}  // namespace tackfree
