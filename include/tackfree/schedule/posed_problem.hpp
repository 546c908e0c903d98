// Posed problem: a scheduling problem in slots, and what of the job each part of it stands for.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/closing_rules.hpp"
#include "tackfree/schedule/grid.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/solver/scheduling_problem.hpp"

#include <cstddef>
#include <utility>
#include <vector>

namespace tackfree {

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
struct PosedProblem {
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

}  // namespace tackfree
