#include "tackfree/volume/coat_volume.hpp"

namespace tackfree {

Mixture mixture(Volume mixed, Fraction thinner_per_coating) {
  const Volume coating = mixed / (1.0 + thinner_per_coating.in(fraction));
  return {.mixed = mixed, .coating = coating, .thinner = mixed - coating};
}

double grain_factor(const FinishingData& data, const Coating& coating, Grain grain,
                    int coat_on_wood) {
  const GrainFactor& factor = data.grain_factors.at(static_cast<std::size_t>(grain));
  if (coat_on_wood == 1) return coating.bare_factor.value * factor.first.value;
  return coat_on_wood == 2 ? factor.second.value : 1.0;
}

Volume mixed_need(Area area, SpreadRate spread, double factor, Fraction transfer) {
  return area / spread * factor / transfer.in(fraction);
}

}  // namespace tackfree
