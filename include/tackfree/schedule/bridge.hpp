// Bridge: operations, clocks, limits and calendars as a scheduling problem in slots.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/air/coating_limits.hpp"
#include "tackfree/air/drying.hpp"
#include "tackfree/schedule/grid.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/solver/scheduling_problem.hpp"

#include <map>
#include <tuple>
#include <vector>

namespace tackfree {

/// Why a slot is closed, as the solver's rule numbers.
namespace rules {
inline constexpr solver::Rule calendar = 1;   ///< nobody at work
inline constexpr solver::Rule too_short = 2;  ///< somebody at work, but not for long enough
inline constexpr solver::Rule quiet = 3;
inline constexpr solver::Rule not_before = 4;
inline constexpr solver::Rule no_coating = 5;
inline constexpr solver::Rule pinned = 6;
inline constexpr solver::Rule due = 7;
inline constexpr solver::Rule window_below = 8;    ///< the coat below takes none unsanded any more
inline constexpr solver::Rule first_gate = 10;     ///< + index of the Gate
inline constexpr solver::Rule as_last = 20;        ///< the last plan has it later
inline constexpr solver::Rule first_release = 30;  ///< + index of the Release; the last is shared
inline constexpr std::size_t most_releases = 225;
}  // namespace rules

/// Done work that kept an operation back: what was waited for and by which kind of rule.
struct Release {
  Wait wait;
  HeldBy by = HeldBy::previous_step;
};

/// Stands in place of an activity for an operation that is done.
inline constexpr std::size_t done_already = static_cast<std::size_t>(-1);

/// The problem, and what its parts stand for. Operations that follow each other at a fixed distance
/// are one activity: parts are dusted off right before they are coated, and oil is wiped off in
/// time.
struct Bridge {
  Grid grid;
  solver::SchedulingProblem problem;
  std::vector<std::size_t> activity_of;   ///< by operation; `done_already` for what is done
  std::vector<std::size_t> operation_of;  ///< by activity: its coat, or its only operation
  std::vector<solver::Run> place;         ///< by operation: slots within its activity
  std::vector<Wait> wait_of;              ///< by lag of the problem
  std::vector<std::pair<std::size_t, std::size_t>> products;  ///< coating, method
  std::vector<std::size_t> batch_of;                          ///< by activity of an operation
  std::vector<Release> releases;  ///< by rule number less `first_release`
};

/// Goals are the light use of every batch. A batch's "ready by" closes all later ends of its last
/// coats.
Bridge bridge(const Job& job, const OperationList& list, const AirSeries& air,
              const std::vector<DryingClock>& clocks, Interval span);

}  // namespace tackfree
