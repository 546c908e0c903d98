#include "tackfree/learning/thirst.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {
namespace {

/// Log-sd of one coat about the person's own mean. Source: assumption of this project.
constexpr double coat_sd = 0.30;

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

}  // namespace

std::vector<Learnt> learnt_thirst(const Job& job) {
  std::vector<Learnt> all;
  for (const Coating& coating : job.coatings) {
    Learnt& learnt = all.emplace_back();
    const std::optional<double> spread = prior_sd(job, coating.name);
    if (!spread || *spread <= 0) continue;
    std::vector<double> readings;
    for (const CoatPutOn& coat : job.history.coats) {
      if (coat.coating != coating.name || coat.used <= Volume{} || coat.expected <= Volume{})
        continue;
      const double reading = std::log(coat.used / coat.expected);
      if (!coat.insisted && is_outlier(*spread, coat_sd, reading))
        learnt.asked_of.push_back(coat.entry);
      else
        readings.push_back(reading);
    }
    learnt.readings = static_cast<int>(readings.size());
    learnt.factor = std::exp(posterior_mean(0.0, *spread, coat_sd, readings));
  }
  return all;
}

std::vector<double> thirst_factors(const Job& job) {
  std::vector<double> factors;
  for (const Learnt& learnt : learnt_thirst(job)) factors.push_back(learnt.factor);
  return factors;
}

}  // namespace tackfree
