// Work at hand: what lots, log and learning make of a job, as it is listed and as it is dated.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/wood_moisture.hpp"
#include "tackfree/learning/thirst.hpp"
#include "tackfree/logged/log_facts.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// What it costs a coat that it was put on before the one below it was dry. Assumed.
struct EarlyCoat {
  Instant counts_from;     ///< when it would have been on if the person had waited
  double films_wet = 1.0;  ///< with what was still to dry under it, in films of its own
};

/// The openings that the air has in it, and so what dates and their proof hold for.
struct AiredAir {
  std::vector<FasterLoss> openings;
  bool every_chance = false;  ///< all in which a coat could have the room open, not these dates'
};

/// The work on a job that is not dated yet.
struct WorkAtHand {
  /// As it was read, but in lots, with the lines of its log that fit, the busy times worked out and
  /// the coatings as slow as the log has taught.
  Job job;
  Instant now;  ///< on the planning grid
  LogFacts facts;
  Lessons lessons;
  std::vector<Learnt> thirst, slowness;  ///< what the log has taught, for each of Job::coatings
  SurfaceTakeoff takeoff;
  JobVolumes volumes;
  KeyedCoats keyed;  ///< sanded for because they miss the window of the coat below
  /// Held to the window of the coat below, with so much to spare at least.
  std::map<CoatPlace, Duration> in_window;
  std::map<std::string, EarlyCoat> early;  ///< by key of the coat
  OperationList list;
  AirSeries air;
  std::optional<AiredAir> aired;  ///< nothing: the air has no airing in it
  Fraction wood_moisture;         ///< where wood settles in the air of `wood_week`
  bool wood_suits_heated_rooms() const {
    return wood_moisture >= driest_for_heated_rooms && wood_moisture <= dampest_for_heated_rooms;
  }
  Interval wood_week;  ///< the week before now as far as known, else the one after it
  Duration board_lag;  ///< how far boards are behind the air; 0 where the job does not name them

  /// From now to the end of the job's horizon.
  Interval span() const { return {now, now + whole_minutes_up(job.horizon)}; }
};

/// The same with the day and hour of every step.
struct DatedWork : WorkAtHand {
  Schedule schedule;
};

}  // namespace tackfree
