// Cautions: what this plan's coatings, room and work call for, and the closing deference.
#pragma once

#include "tackfree/fumes/emission.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// The cautions that fit, the gravest word first, each text once. Texts come from the finishing
/// data; figures of this job (grams of solvent, share of the explosive limit) are added to them.
std::vector<Caution> cautions(const Job& job, const OperationList& list, const JobVolumes& volumes,
                              const std::vector<CoatEmission>& emissions);

}  // namespace tackfree
