#include "tackfree/air/recoat_window.hpp"

#include "tackfree/air/drying_rate.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <array>

namespace tackfree {

namespace {

constexpr Minutes step{5};

}  // namespace

std::optional<Duration> longest_unsanded(const Coating& coating, Temperature warmest) {
  if (!coating.recoat_unsanded_within) return std::nullopt;
  const Duration on_label = coating.recoat_unsanded_within->value;
  const double faster = StageRate(coating, Stage::recoat)
                            .factors({warmest, vapour_pressure(warmest, coating.label_humidity)})
                            .temperature;
  return faster > 1.0 ? on_label / faster : on_label;
}

bool takes_unsanded(Minutes since, Duration window) {
  constexpr Duration rounding = minutes(1e-6);
  return to_duration(since) <= window + rounding;
}

std::optional<Instant> recoat_unsanded_until(const Coating& coating, const AirSeries& air,
                                             Instant applied) {
  if (!coating.recoat_unsanded_within) return std::nullopt;
  const Instant end = air.covers().end;
  Instant last = applied;
  Temperature warmest = celsius(-273.15);
  Duration allowed = coating.recoat_unsanded_within->value;
  // The boards in the hour that ends at `at`, the oldest overwritten: reading the air is what
  // costs.
  std::array<Temperature, one_hour / step + 1> hour;
  hour[0] = air.surface_at(applied);
  std::size_t read = 1;
  for (Instant at = applied + step; at <= end; at += step, ++read) {
    hour[read % hour.size()] = air.surface_at(at);
    const Temperature lowest = read + 1 >= hour.size() ? *std::ranges::min_element(hour) : warmest;
    if (lowest > warmest) {
      warmest = lowest;
      allowed = longest_unsanded(coating, warmest).value();
    }
    if (!takes_unsanded(at - applied, allowed)) break;
    last = at;
  }
  return last;
}

}  // namespace tackfree
