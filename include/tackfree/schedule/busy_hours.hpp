// Busy hours: when the events of a person's calendar are on, each repeated as its rule says.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"

#include <vector>

namespace tackfree {

/// The stretches within `span` in which one of the events is on; joined, in order. An event always
/// happens at its own begin, also when its rule would not say so. A local time that the clocks skip
/// or repeat is read as RFC 5545 says (3.3.5); the work grows with the length of the span only.
std::vector<Interval> busy_hours(const std::vector<BusyEvent>& events, Interval span);

/// The stretches in which a person is busy, by events and by what was worked out of them.
std::vector<Interval> busy_hours(const WorkCalendar& calendar, Interval span);

/// More stretches than these of one person are not planned around: nine a day for a year.
inline constexpr std::size_t most_busy_stretches = 3'300;

/// Works out once, for a plan over `span` and the week before and after it, when everybody is busy,
/// and drops the events. A Problem for whoever has too many stretches.
void settle_busy_hours(Job& job, Interval span, Problems& problems);

}  // namespace tackfree
