// Calendar reader: working hours, days off and quiet hours of a job.
#pragma once

#include "tackfree/input/json_cursor.hpp"
#include "tackfree/model/work_calendar.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace tackfree {

/// The job's `calendar` object, its times in `zone`.
WorkCalendar read_calendar(JsonCursor& calendar, const Zone& zone);

/// The hours of the list under `key`, such as "18:30-21:30", in order; overlapping ones are
/// Problems. Hours over midnight become two where `over_midnight`, else they are a Problem.
std::vector<DayWindow> read_windows(JsonCursor& at, std::string_view key, bool over_midnight);

/// A date of `2027-04-05` form from 1970 to 2037; the time zone data end there.
std::optional<Date> parse_planning_date(std::string_view text);

}  // namespace tackfree
