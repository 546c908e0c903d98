// Plan: everything computed for one job, for the reports to print.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/drying_explained.hpp"
#include "tackfree/fumes/cautions.hpp"
#include "tackfree/fumes/emission.hpp"
#include "tackfree/fumes/ignition.hpp"
#include "tackfree/fumes/signal_word.hpp"
#include "tackfree/learning/thirst.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation_list.hpp"
#include "tackfree/plan/cold_airing.hpp"
#include "tackfree/plan/course.hpp"
#include "tackfree/plan/note.hpp"
#include "tackfree/schedule/attended_work.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/shopping/shopping_list.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <map>
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

/// What it costs a coat that it was put on before the one below it was dry. Assumed.
struct EarlyCoat {
  Instant counts_from;     ///< when it would have been on if the person had waited
  double films_wet = 1.0;  ///< with what was still to dry under it, in films of its own
};

/// The openings that the plan's air has in it, and so what its dates and its proof hold for.
struct AiredAir {
  std::vector<FasterLoss> openings;
  bool every_chance = false;  ///< all in which a coat could have the room open, not this plan's own
};

struct Plan {
  Job job;
  Instant now;
  std::vector<Learnt> thirst, slowness;  ///< what the log has taught, for each of Job::coatings
  SurfaceTakeoff takeoff;
  JobVolumes volumes;
  JobVolumes to_come;              ///< those of the coats that are not on yet
  std::vector<Volume> tins_short;  ///< by coating: taken by the log over what was at hand
  KeyedCoats keyed;                ///< sanded for because they miss the window of the coat below
  /// Held to the window of the coat below, with so much to spare at least.
  std::map<CoatPlace, Duration> in_window;
  std::map<std::string, EarlyCoat> early;  ///< by key of the coat
  OperationList list;
  AirSeries air;
  std::optional<AiredAir> aired;  ///< nothing: the air has no airing in it
  Fraction wood_moisture;         ///< where wood settles in the air of `now`
  Duration board_lag;  ///< how far boards are behind the air; 0 where the job does not name them
  Schedule schedule;
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
  std::vector<Move> moves;  ///< since the last plan
  std::vector<Note> notes;
};

}  // namespace tackfree
