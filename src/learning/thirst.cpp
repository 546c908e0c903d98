#include "tackfree/learning/thirst.hpp"

#include "tackfree/base/elementary.hpp"

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

Learnt learnt_from(const Taught& before, Spreads spreads,
                   const std::vector<RatioReading>& readings) {
  Learnt learnt;
  const double mean = logarithm(before.factor);
  const double sd = posterior_sd(spreads.prior, spreads.reading, before.coats);
  std::vector<double> counted;
  for (const RatioReading& reading : readings)
    if (!reading.insisted && is_outlier(sd, spreads.reading, reading.value - mean))
      learnt.asked_of.push_back(reading.entry);
    else
      counted.push_back(reading.value);
  learnt.here = static_cast<int>(counted.size());
  learnt.readings = before.coats + learnt.here;
  learnt.factor = exponential(posterior_mean(mean, sd, spreads.reading, counted));
  return learnt;
}

std::vector<Learnt> learnt_thirst(const Job& job, const std::vector<CoatPutOn>& coats) {
  std::vector<Learnt> all;
  for (const Coating& coating : job.coatings) {
    Learnt& learnt = all.emplace_back();
    const std::optional<double> spread = prior_sd(job, coating.name);
    if (!spread || *spread <= 0) continue;
    std::vector<RatioReading> readings;
    for (const CoatPutOn& coat : coats)
      if (coat.coating == coating.name && coat.used > Volume{} && coat.expected > Volume{})
        readings.push_back({logarithm(coat.used / coat.expected), coat.insisted, coat.entry});
    learnt = learnt_from(coating.need_taught, {*spread, coat_sd}, readings);
  }
  return all;
}

std::vector<double> factors_of(const std::vector<Learnt>& learnt) {
  std::vector<double> factors;
  factors.reserve(learnt.size());
  for (const Learnt& each : learnt) factors.push_back(each.factor);
  return factors;
}

}  // namespace tackfree
