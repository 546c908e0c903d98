#include "tackfree/operations/pots.hpp"

#include "tackfree/base/elementary.hpp"

#include <algorithm>
#include <cmath>

namespace tackfree {

/// Source: UFGS 09971, 3.7.1.3: half for every 10 C.
constexpr TemperatureDifference halves_in = kelvins(10);

std::optional<Duration> pot_life_in(const Coating& coating, Temperature air) {
  if (!coating.pot_life) return std::nullopt;
  const double halvings = (air - coating.label_temperature) / halves_in;
  return coating.pot_life->value * power(2, -std::max(0.0, halvings));
}

void add_pots(Operation& coat, const Coating& coating, Duration mixing,
              std::optional<Temperature> warmest) {
  const Temperature air =
      std::min(warmest.value_or(coating.label_temperature), coating.limits.put_on_max.value);
  coat.pot_life = pot_life_in(coating, air).value();
  coat.pots = std::max(1, static_cast<int>(std::ceil(coat.work / coat.pot_life - 1e-9)));
  coat.work += coat.pots * mixing;
}

void add_portions(Operation& coat, const Coating& coating, WorkRate wiping_off) {
  const Duration rest = coating.wipe_off_within->value - coating.wipe_off_after->value;
  const Duration wiping = coat.area / wiping_off;
  const double times = std::max(coat.work / rest, wiping / rest);
  coat.portions = std::max(1, static_cast<int>(std::ceil(times - 1e-9)));
  coat.work += (coat.portions - 1) * (coating.wipe_off_after->value + wiping / coat.portions);
}

}  // namespace tackfree
