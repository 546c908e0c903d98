// Coat volume: what one coat takes from the tins, and how thinning splits it.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/finishing_data.hpp"

namespace tackfree {

/// Liquid as it goes on the wood. coating + thinner = mixed.
struct Mixture {
  Volume mixed;
  Volume coating;
  Volume thinner;
};

/// coating = mixed / (1 + T), thinner = the rest; T = thinner per volume of coating, T >= 0.
Mixture mixture(Volume mixed, Fraction thinner_per_coating);

/// How much more a grain drinks than a sealed smooth face. `coat_on_wood` counts over the whole
/// system, 1 for the coat on bare wood: there it is the coating's bare factor times the grain's
/// first factor, then the grain's second factor, then 1.
/// Source: common practice, no source.
double grain_factor(const FinishingData& data, const Coating& coating, Grain grain,
                    int coat_on_wood);

/// Mixed liquid from the tins: area / spread x factor / transfer. `spread` is before losses, so
/// that they count once. What the tool keeps comes on top, per session.
Volume mixed_need(Area area, SpreadRate spread, double factor, Fraction transfer);

}  // namespace tackfree
