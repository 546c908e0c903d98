// Plan: everything computed for one job, for the reports to print.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/fumes/cautions.hpp"
#include "tackfree/fumes/emission.hpp"
#include "tackfree/fumes/vapour_words.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/attended_work.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/shopping/shopping_list.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// Something the person should know about this plan: a warning, not a mistake.
struct Note {
  std::string about;  ///< `film`, `air`, `back side`, ...
  std::string text;
};

struct Plan {
  Job job;
  Instant now;
  SurfaceTakeoff takeoff;
  JobVolumes volumes;
  OperationList list;
  AirSeries air;
  Schedule schedule;
  AttendedWork work;
  std::vector<CoatEmission> emissions;
  std::optional<RoomJudgement> room;  ///< nothing without the room's volume or without solvent
  std::vector<Caution> cautions;
  ShoppingList shopping;
  std::vector<Note> notes;
};

}  // namespace tackfree
