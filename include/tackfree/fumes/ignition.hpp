// Ignition: when vapour that burns may be in the room, and what must stay off for so long.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/fumes/room_judgement.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// May vapour that burns come off this coating, what thins it or what cleans its tools? By flash
/// points up to 93 C.
bool gives_flammable_vapour(const Job& job, const Coating& coating, bool thinned);

/// One session of a coating that gives off vapour that burns, or such a coat in the log.
struct FlammableTime {
  std::size_t first_step = 0;  ///< index into Schedule::steps, before which all is off
  Interval time;               ///< from the opening of the tin until the room no longer smells
};

/// In order of time. A room counts as no longer smelling once its airing has ended and its vapour
/// is below a tenth of the 8-hour limits; where no vapour was estimated, a day after the last coat.
/// Source of both: assumed.
std::vector<FlammableTime> flammable_times(const Job& job, const OperationList& list,
                                           const Schedule& schedule,
                                           const std::optional<RoomJudgement>& room);

/// Hours in which a heater that the job itself runs, daily or for a time, may light that vapour.
struct HeaterClash {
  std::optional<HeaterKind> kind;  ///< nothing: the job does not say what it is
  std::vector<Interval> hours;     ///< in order, at least one
};
/// Nothing where the job runs no heater, or a sealed one.
std::optional<HeaterClash> heater_clash(const Job& job, const std::vector<FlammableTime>& times);

/// Does the job run a heater that may light vapour: any that is not sealed?
bool heater_may_light(const Job& job);

/// Does the job warm the room with a heater that has nothing hot open to the room?
bool warmed_by_sealed_heater(const Job& job);

/// A coating that is put on in air as warm as its flash point, or warmer.
struct CoatedAboveFlash {
  std::size_t coating = 0;  ///< index into Job::coatings
  Temperature warmest;      ///< air as one of its coats goes on
};
/// Each coating once, in the order of their dates.
std::vector<CoatedAboveFlash> coated_above_flash(const Job& job, const OperationList& list,
                                                 const AirSeries& air, const Schedule& schedule);

/// Must anything be off before such a tin is opened: what the job lists, or its heater?
bool has_ignition_source(const Job& job);

}  // namespace tackfree
