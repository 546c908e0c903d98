// Serial scheduling: activities placed one after another, each as early as the rules allow.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <cstdint>
#include <vector>

namespace tackfree::solver {

/// Places the activities one by one: of those whose predecessors are placed, the one with the
/// smallest `priority` (by activity; ties: the lower index). Each takes the earliest slots that
/// keep all rules given what is placed already. An activity that finds no place stays unplaced,
/// with the rule that kept it out, and so do those that wait for it. What comes too late for a
/// maximum lag puts off the activity that the lag counts from; that is tried a limited number of
/// times. Activities placed, those placed again with them, are added to `placed`.
Solution placed_by_priority(const SchedulingProblem& problem,
                            const std::vector<std::int64_t>& priority,
                            std::int64_t* placed = nullptr);

/// The same, but the next one is always the one that can start first (ties: the lower index).
Solution placed_by_earliest_start(const SchedulingProblem& problem);

/// The best, by `worth`, of these: earliest start first; listed order; and, where there are at most
/// four groups of activities that wait for each other, each order of the groups.
Solution serial_schedule(const SchedulingProblem& problem);

}  // namespace tackfree::solver
