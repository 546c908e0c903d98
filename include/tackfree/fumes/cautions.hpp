// Cautions: what this plan's coatings, room and work call for, and the closing deference.
#pragma once

#include "tackfree/fumes/emission.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// The most solvent that coats release which start within the same 24 hours of the schedule. Coats
/// without a date count as if the heaviest one of each batch, all its sides, went on in one day.
Mass solvent_in_a_day(const OperationList& list, const JobVolumes& volumes,
                      const std::vector<CoatEmission>& emissions, const Schedule& schedule);

/// The cautions that fit, the gravest word first, each text once. Texts come from the finishing
/// data: those that the coatings and the methods name, and those for sanding, an attached house and
/// children. Figures of this job are added to them: grams of solvent in a day and, where the room's
/// volume is known, the bound on the share of the explosive limit, which no real concentration
/// passes. At 10 % of that limit the word is WARNING at the least, at 25 % DANGER; below a flash
/// point of 38 C it is WARNING. Source: DANGER at 25 % of the lower flammable limit as in
/// International Fire Code 2018, 2404.7.3; 10 % as the State of Washington's WAC 296-304-03009; the
/// words are a choice of this project by their meaning in ANSI Z535.4.
std::vector<Caution> cautions(const Job& job, const OperationList& list, const JobVolumes& volumes,
                              const std::vector<CoatEmission>& emissions, const Schedule& schedule);

}  // namespace tackfree
