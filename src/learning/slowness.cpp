#include "tackfree/learning/slowness.hpp"

#include "tackfree/base/elementary.hpp"

#include <cmath>
#include <optional>

namespace tackfree {
namespace {

constexpr double trial_sd = 0.50;

bool passed_after_failing(const CoatTried& coat) {
  return coat.passed_at && (!coat.failed_at || *coat.passed_at >= *coat.failed_at);
}

/// What a coat says that was dry in the end; `known` is the factor of earlier jobs. That it was not
/// dry before says only that it is slower than that.
std::optional<double> reading_of_passed(const CoatTried& coat, double known) {
  if (*coat.passed_at < 1.0) return logarithm(*coat.passed_at);
  if (!coat.failed_at) return std::nullopt;
  const double middle = (logarithm(*coat.failed_at) + logarithm(*coat.passed_at)) / 2;
  return middle > logarithm(known) ? std::optional(middle) : std::nullopt;
}

}  // namespace

double slowness_spread(const Coating& coating) {
  return coating.law.slowed_by_humidity || coating.dries_by_oxidation ? 0.30 : 0.20;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): bare numbers by their nature
double expected_need(const Coating& coating, double factor, double had) {
  return exponential(mean_over(logarithm(factor), slowness_spread(coating), logarithm(had)));
}

std::vector<Learnt> learnt_slowness(const Job& job, const std::vector<CoatTried>& tried) {
  std::vector<Learnt> all;
  for (const Coating& coating : job.coatings) {
    std::vector<RatioReading> readings;
    const auto learnt = [&] {
      return learnt_from(coating.drying_taught, {slowness_spread(coating), trial_sd}, readings);
    };
    std::vector<CoatTried> failed;
    for (const CoatTried& coat : tried) {
      if (coat.coating != coating.name) continue;
      if (!passed_after_failing(coat)) {
        if (coat.failed_at) failed.push_back(coat);
        continue;
      }
      if (const auto reading = reading_of_passed(coat, coating.drying_taught.factor))
        readings.push_back({*reading, coat.insisted, coat.entry});
    }
    // Each is expected to need more than what is known by then, so it never makes a coat quicker.
    for (const CoatTried& coat : failed) {
      const double need = expected_need(coating, learnt().factor, *coat.failed_at);
      readings.push_back({logarithm(need), coat.insisted, coat.entry});
    }
    all.push_back(learnt());
  }
  return all;
}

}  // namespace tackfree
