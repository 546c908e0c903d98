// Grid: instants as the solver's slots, and back.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"
#include "tackfree/solver/open_time.hpp"

namespace tackfree {

/// The planning grid of one plan: slot 0 begins at the plan's now.
struct Grid {
  Interval span;
  Minutes slot_length{5};

  solver::Slot slots() const { return static_cast<solver::Slot>(span.length() / slot_length); }
  Instant at(solver::Slot slot) const { return span.begin + slot_length * slot; }
  /// The first slot that begins at or after `at`; negative before the span.
  solver::Slot slot_up(Instant at) const;
  /// The slot that holds `at`.
  solver::Slot slot_down(Instant at) const;
  solver::Slot slots_up(Duration amount) const;
};

}  // namespace tackfree
