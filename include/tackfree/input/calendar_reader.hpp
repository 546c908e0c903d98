// Calendar reader: working hours, days off and quiet hours of a job.
#pragma once

#include "tackfree/input/named_files.hpp"
#include "tackfree/model/work_calendar.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace tackfree {

/// The job's `calendar` object, its times in `zone`. Calendar files are found through `files`.
/// Without hours it is a Problem, unless people have their own.
WorkCalendar read_calendar(JsonCursor& calendar, const Zone& zone, NamedFiles& files,
                           bool hours_needed = true);

/// The hours of one person: those of `shared`, with other weekly hours where the object has them,
/// and more days off, added hours and busy times.
WorkCalendar read_own_hours(JsonCursor& person, const WorkCalendar& shared, NamedFiles& files);

/// The hours of the list under `key`, such as "18:30-21:30", in order; overlapping ones are
/// Problems. Hours over midnight become two where `over_midnight`, else they are a Problem.
std::vector<DayWindow> read_windows(JsonCursor& at, std::string_view key, bool over_midnight);

/// A date of `2027-04-05` form from 1970 to 2037; the time zone data end there.
std::optional<Date> parse_planning_date(std::string_view text);

}  // namespace tackfree
