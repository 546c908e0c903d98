// Work time: the person's calendar as stretches of UTC, nights when clocks change included.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/model/work_calendar.hpp"

#include <vector>

namespace tackfree {

/// When the person works within `span`: weekly hours less days off, and added hours, less what the
/// person's own calendar has; joined where they touch, in order. A window edge that the clocks skip
/// or repeat is read as RFC 5545 says.
std::vector<Interval> working_hours(const WorkCalendar& calendar, Interval span);

/// The daily windows `windows` of local time within `span`, joined and in order.
std::vector<Interval> daily_hours(const WorkCalendar& calendar,
                                  const std::vector<DayWindow>& windows, Interval span);

}  // namespace tackfree
