// Course: how air, hours, waits and drying go from day to day, for the reports to draw.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

struct AirHour {
  Instant at;
  Temperature temperature, dew_point;
  Humidity humidity = {};
};

/// The lowest and the highest of one local day, of its hours within the course.
struct AirDay {
  Date on;
  Temperature low, high, dew_low, dew_high;
};

/// When the air by itself forbids putting a coating on, to the half hour.
struct UnfitAir {
  std::size_t coating = 0;  ///< index into Job::coatings
  std::vector<Interval> times;
};

/// What a batch waits for between two pieces of its work.
struct WaitSpan {
  std::size_t batch = 0;  ///< index into Job::batches
  HeldBy by = HeldBy::calendar;
  Interval time;
};

/// How far a coat has dried on its way to the stage that the work after it waits for; light use
/// where it is the last one.
struct DryingCourse {
  std::size_t dated_step = 0;  ///< index into Schedule::steps
  Stage towards = Stage::sand;
  Interval time;
  /// Of the drying that the whole wait holds, what is done at each hour from its beginning on, and
  /// at its end: 0 to 1.
  std::vector<double> done;
};

/// All within `days`, in order of time.
struct Course {
  Interval days;             ///< from now to the end of the local day of the last work or light use
  std::vector<AirHour> air;  ///< at each full hour, and at both ends
  std::vector<AirDay> air_days;
  std::vector<Interval> working, no_power_sanding;
  std::vector<UnfitAir> unfit;  ///< one for each coating in use
  std::vector<WaitSpan> waits;
  std::vector<DryingCourse> drying;  ///< of the coats that reach their stage
};

/// The course of the dated steps. Nothing is decided here: it follows from the schedule.
Course course(const Job& job, const OperationList& list, const AirSeries& air,
              const Schedule& schedule);

}  // namespace tackfree
