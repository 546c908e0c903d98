// Busy hours: when the events of a person's calendar are on, each repeated as its rule says.
#pragma once

#include "tackfree/model/busy_event.hpp"

#include <vector>

namespace tackfree {

/// The stretches within `span` in which one of the events is on; joined, in order. An event always
/// happens at its own begin, also when its rule would not say so. A local time that the clocks skip
/// or repeat is read as RFC 5545 says (3.3.5); the work grows with the length of the plan only, or
/// for a rule with a count with the time since its begin.
std::vector<Interval> busy_hours(const std::vector<BusyEvent>& events, Interval span);

}  // namespace tackfree
