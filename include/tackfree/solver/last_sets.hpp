// Last sets: which chains do their last work in the last window, and the deadlines that follow.
#pragma once

#include "tackfree/solver/chains.hpp"

#include <vector>

namespace tackfree::solver {

/// Latest starts by chain and link; -1 where no start is in time.
using Deadlines = std::vector<std::vector<Slot>>;

/// The latest starts with which all goals may be met by the target.
Deadlines deadlines_for(const std::vector<Chain>& chains, Slot target);

/// The last window before the target has too few hours for the last work of all chains. Each
/// largest set of chains whose last work fits there is a last set; with it the others end before
/// that window, which makes their deadlines sooner. Every schedule that keeps `deadlines` keeps
/// those of some last set. `hours_before` counts, by slot, the hours in which work of any kind can
/// be done.
std::vector<Deadlines> deadlines_by_last_set(const SchedulingProblem& problem,
                                             const std::vector<Chain>& chains,
                                             const std::vector<Slot>& hours_before,
                                             const Deadlines& deadlines);

}  // namespace tackfree::solver
