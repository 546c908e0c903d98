#include "tackfree/learning/slowness.hpp"

#include <cmath>
#include <optional>

namespace tackfree {
namespace {

constexpr double trial_sd = 0.50;

std::optional<double> reading_of(const CoatTried& coat, const Coating& coating) {
  if (coat.failed_at && coat.passed_at && *coat.passed_at >= *coat.failed_at)
    return (std::log(*coat.failed_at) + std::log(*coat.passed_at)) / 2;
  if (coat.failed_at) return std::log(expected_need(coating, 1.0, *coat.failed_at));
  if (coat.passed_at && *coat.passed_at < 1.0) return std::log(*coat.passed_at);
  return std::nullopt;
}

}  // namespace

double slowness_spread(const Coating& coating) {
  return coating.law.slowed_by_humidity || coating.dries_by_oxidation ? 0.30 : 0.20;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): bare numbers by their nature
double expected_need(const Coating& coating, double factor, double had) {
  return std::exp(mean_over(std::log(factor), slowness_spread(coating), std::log(had)));
}

std::vector<Learnt> learnt_slowness(const Job& job, const std::vector<CoatTried>& tried) {
  std::vector<Learnt> all;
  for (const Coating& coating : job.coatings) {
    std::vector<RatioReading> readings;
    for (const CoatTried& coat : tried) {
      const auto reading = coat.coating == coating.name ? reading_of(coat, coating) : std::nullopt;
      if (reading) readings.push_back({*reading, coat.insisted, coat.entry});
    }
    all.push_back(
        learnt_from(coating.drying_taught, {slowness_spread(coating), trial_sd}, readings));
  }
  return all;
}

}  // namespace tackfree
