// Respirator: the strictest one that the vapours and mists of a job call for.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// What is worn while coating. There is one for the whole job: one room holds all of its vapours.
struct Respirator {
  enum class Kind {  ///< from the mildest to the strictest
    as_data_sheet,
    organic_vapour,
    organic_vapour_and_particles,
    formaldehyde,  ///< cartridges that the safety data sheet names for it
    supplied_air
  };

  Kind kind = Kind::as_data_sheet;
  bool worn_always = false;  ///< not only where the airing is too little
  bool with_particle_filter = false;
  bool against_isocyanates = false;
  bool against_sprayed_isocyanates = false;
  std::vector<std::size_t> no_cartridges;  ///< solvents that no cartridge is listed for
};

/// Is it mist of isocyanates: work for a spray booth and supplied air only?
bool sprays_isocyanates(const Coating& coating, const Method& method);

/// By the coatings of the needs, the methods of the operations and the solvents of both, thinner
/// and cleaner with them. Nothing where nothing is breathed that any text warns of. Isocyanates
/// call for supplied air: they have no warning smell. Source: NIOSH Alert 96-111 (from memory).
/// Solvents without a listed cartridge: the solvents' data. Mist: common practice, no source.
std::optional<Respirator> respirator(const Job& job, const OperationList& list,
                                     const JobVolumes& volumes);

}  // namespace tackfree
