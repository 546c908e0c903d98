// Plan: everything computed for one job, for the reports to print.
#pragma once

#include "tackfree/air/drying_explained.hpp"
#include "tackfree/fumes/cautions.hpp"
#include "tackfree/fumes/emission.hpp"
#include "tackfree/fumes/ignition.hpp"
#include "tackfree/fumes/signal_word.hpp"
#include "tackfree/plan/cold_airing.hpp"
#include "tackfree/plan/course.hpp"
#include "tackfree/plan/note.hpp"
#include "tackfree/plan/remedy.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/schedule/attended_work.hpp"
#include "tackfree/shopping/left_over.hpp"
#include "tackfree/shopping/shopping_list.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// A step that does not stand where the last plan had it.
struct Move {
  std::optional<std::size_t> dated_step;  ///< index into Schedule::steps; nothing: it is gone
  std::string title;                      ///< of one that is gone, as the last plan called it
  std::optional<Instant> from;            ///< nothing: it is new
  std::optional<Instant> to;
};

/// The dated work, and all that follows from it.
struct Plan : DatedWork {
  JobVolumes to_come;              ///< those of the coats that are not on yet
  std::vector<Volume> tins_short;  ///< by coating: taken by the log over what was at hand
  /// Why each coat's stages take as long as they do: by step of the schedule, empty for other work.
  std::vector<std::vector<DryingExplanation>> drying;
  Course course;
  AttendedWork work;
  std::vector<CoatEmission> emissions;
  std::optional<RoomJudgement> room;     ///< nothing without the room's volume or without solvent
  std::vector<FlammableTime> flammable;  ///< when flames and sparks stay off
  std::optional<HeaterClash> heater_clash;
  std::optional<ColdAiring> cold_airing;  ///< nothing without an airing
  std::vector<RaisedCaution> cautions;
  ShoppingList shopping;
  LeftOver left_over;
  std::vector<Move> moves;  ///< since the last plan
  std::vector<Note> notes;
  std::vector<Remedy> remedies;  ///< of the first step without time, as far as they were looked for
};

}  // namespace tackfree
