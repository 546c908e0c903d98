// Instance: a published scheduling instance as a problem for the solver, from its file.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <stdexcept>
#include <string>

namespace tackfree::bench {

struct Instance {
  solver::SchedulingProblem problem;
  bool counts_sessions = false;
};

/// What is wrong with a file, with its name.
struct BadInstance : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Reads by the ending of the name: `.json` (finishing schedules, see tests/published/scheduling),
/// `.sm` and `.SCH` (PSPLIB). Throws BadInstance.
Instance read_instance(const std::string& path);

Instance finishing_instance(const std::string& path, const std::string& text);
Instance single_mode_instance(const std::string& path, const std::string& text);
Instance maximum_lag_instance(const std::string& path, const std::string& text);

/// The table by which an activity's own end is when it is ready.
solver::LagTable own_end(solver::Slot horizon);

}  // namespace tackfree::bench
