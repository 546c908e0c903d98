// Emission: how much solvent each coat puts into the air of the room.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <vector>

namespace tackfree {

/// So much of one solvent.
struct SolventMass {
  std::size_t solvent = 0;  ///< index into FinishingData::solvents
  Mass mass;
};

/// Grams of solvent that one coat of one side releases, thinner included.
struct CoatEmission {
  std::size_t need = 0;  ///< index into JobVolumes::coats
  Mass solvent;
  std::vector<SolventMass> parts{};  ///< the same by solvent, each once
};

/// Coating litres x its volatiles + thinner litres x the thinner's. Really released, not the
/// regulatory figure, which leaves out water and exempt solvents.
std::vector<CoatEmission> emissions(const Job& job, const JobVolumes& volumes);

/// What one cleaning of the tools after this coating gives off: the cleaner of one session, all of
/// it, at the thinner's density where that cleans; nothing where water does. Source of all of it:
/// assumed, to err towards more vapour.
std::vector<SolventMass> cleaning_parts(const Job& job, std::size_t coating);

/// Concentration if all of `solvent` stayed in the closed room: no peak of that coat can be higher.
MassPerVolume still_room_bound(Mass solvent, Volume room);

/// Lower explosive limit used where the class has none of its own: 40 g/m3.
/// Source: assumption of this project; published LELs of the solvents concerned lie at 40-80 g/m3.
inline constexpr MassPerVolume assumed_explosive_limit = grams_per_cubic_metre(40);

}  // namespace tackfree
