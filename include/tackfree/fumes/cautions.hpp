// Cautions: what this plan's coatings, room and work call for, and the closing deference.
#pragma once

#include "tackfree/fumes/emission.hpp"
#include "tackfree/fumes/room_judgement.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// Solvent of the heaviest 24 hours of the schedule, and of the coats without a date, which count
/// as if the heaviest one of each batch, all its sides, went on in one day. The cleaner of the
/// tools is in both.
struct SolventInADay {
  Mass heaviest;  ///< of both
  Mass undated;
};
SolventInADay solvent_in_a_day(const Job& job, const OperationList& list, const JobVolumes& volumes,
                               const std::vector<CoatEmission>& emissions,
                               const Schedule& schedule);

/// The cautions that fit, the gravest word first, each text once. Texts come from the finishing
/// data: those that the coatings and the methods name, and those for sanding, an attached house,
/// children and large stores. The room's judgement gives the vapour text its figures, its remedy
/// and its word; coats without a date are judged by the bound that all of their solvent stays in
/// the closed room. At 10 % of the explosive limit the word is WARNING at the least, at 25 %
/// DANGER; below a flash point of 38 C it is WARNING. Isocyanates that are sprayed are DANGER, and
/// so is spraying what flashes below 38 C in a closed room or beside what the job lists as a source
/// of ignition. These, and isocyanates in any case, come first in all that is printed. Source:
/// DANGER at 25 % of the lower flammable limit as in International Fire Code 2018, 2404.7.3; 10 %
/// as the State of Washington's WAC 296-304-03009; the words are a choice of this project by their
/// meaning in ANSI Z535.4, and no match for the signal word of a safety data sheet.
std::vector<Caution> cautions(const Job& job, const OperationList& list, const JobVolumes& volumes,
                              const std::vector<CoatEmission>& emissions, const Schedule& schedule,
                              const std::optional<RoomJudgement>& room);

}  // namespace tackfree
