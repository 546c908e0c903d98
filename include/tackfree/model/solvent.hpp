// Solvent: what evaporates from a coat, how strong its vapour may be, and when it can burn.
#pragma once

#include "tackfree/base/sourced.hpp"
#include "tackfree/base/temperature.hpp"
#include "tackfree/base/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// One solvent. Exposure limits are for healthy workers; none is made for homes.
struct Solvent {
  std::string key;                    ///< `mineral_spirits`
  std::string title;                  ///< `mineral spirits`
  std::vector<std::string> known_as;  ///< words by which a text on a tin means it
  Sourced<MolarMass> molar_mass;
  Sourced<Fraction> explosive_limit;  ///< lower explosive limit, share of the air's volume
  std::optional<Sourced<Temperature>> flash_point;
  std::string limits_by;                              ///< who set them: `NIOSH`
  Sourced<MassPerVolume> limit_8h;                    ///< mean over 8 hours
  std::optional<Sourced<MassPerVolume>> limit_15min;  ///< mean over 15 minutes
  Sourced<ChangeRate>
      release;  ///< share of a wet coat's solvent that leaves in an hour, first order
  bool cartridges_serve = true;  ///< false: only supplied-air respirators are listed for it
};

/// A solvent's part of what a coating or thinner gives off, by mass.
struct SolventShare {
  std::string solvent;  ///< key of a Solvent
  Sourced<Fraction> share;
};

}  // namespace tackfree
