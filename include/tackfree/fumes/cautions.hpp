// Cautions: what this plan's coatings, room and work call for, and the closing deference.
#pragma once

#include "tackfree/fumes/emission.hpp"
#include "tackfree/fumes/respirator.hpp"
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

/// What has no date, if all of it stayed in the still, closed room.
struct UndatedVapour {
  MassPerVolume bound;
  double explosive_share = 0;  ///< of the assumed explosive limit
};

/// Shares of the explosive limit from which vapour counts as able to burn, and to explode. Source:
/// the State of Washington's WAC 296-304-03009 for 10 %; International Fire Code 2018, 2404.7.3 for
/// 25 %.
inline constexpr double can_burn_share = 0.10;
inline constexpr double can_explode_share = 0.25;

/// Mist of what burns, in a closed room or beside a flame.
struct SprayedMist {
  bool room_closed = false;
  bool beside_source = false;  ///< of ignition
};

/// The signal word that a safety data sheet has for the flash point.
enum class DataSheetWord { danger, warning };

/// A caution that this plan calls for: its text from the finishing data, with the word raised to
/// what is known of the plan, and the facts of the plan that belong into the text.
struct RaisedCaution {
  Caution text;
  // Vapour.
  std::optional<Mass> in_a_day;  ///< evaporates in the heaviest 24 hours
  bool volume_unknown = false;   ///< of the room: its vapour is not estimated
  std::optional<UndatedVapour> undated;
  bool of_room = false;                  ///< the room's judgement belongs into it
  std::optional<Respirator> respirator;  ///< the job's, with the first caution on what is breathed
  // Spraying and ignition.
  bool sprayed_isocyanates = false;
  std::optional<SprayedMist> mist;
  bool names_sources = false;  ///< what the job has that can light vapour belongs into it
  std::optional<DataSheetWord> data_sheet_word;
};

/// The cautions that fit, the gravest word first, each text once. Texts come from the finishing
/// data: those that the coatings and the methods name, and those for sanding, an attached house,
/// children and large stores. The room's judgement gives the vapour text its figures, its remedy
/// and its word; coats without a date are judged by the bound that all of their solvent stays in
/// the closed room. At 10 % of the explosive limit the word is WARNING at the least, at 25 %
/// DANGER; below a flash point of 38 C it is WARNING. Isocyanates that are sprayed are DANGER, and
/// so is spraying what flashes below 38 C in a closed room or beside what the job lists as a source
/// of ignition. These, and isocyanates in any case, come first in all that is printed. The
/// words are a choice of this project by their meaning in ANSI Z535.4, and no match for the signal
/// word of a safety data sheet.
std::vector<RaisedCaution> cautions(const Job& job, const OperationList& list,
                                    const JobVolumes& volumes,
                                    const std::vector<CoatEmission>& emissions,
                                    const Schedule& schedule,
                                    const std::optional<RoomJudgement>& room);

}  // namespace tackfree
