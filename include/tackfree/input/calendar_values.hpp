// Calendar values: dates, durations, zones and rules of repeating as iCalendar files write them.
#pragma once

#include "tackfree/model/busy_event.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// `20270405`, `20270405T183000` or `20270405T183000Z`; seconds are kept apart.
struct CalendarTime {
  LocalTime local;
  bool has_clock = false;
  bool utc = false;
  int seconds = 0;
};

/// Nothing when malformed, no such day or hour, or a year before 1600.
std::optional<CalendarTime> parse_calendar_time(std::string_view text);

/// `P1W`, `P2DT3H`, `PT90M`: whole days, and what is left in minutes, seconds rounded up. Nothing
/// when malformed, negative or over 100 years.
struct CalendarDuration {
  int days = 0;
  Minutes longer{0};
};
std::optional<CalendarDuration> parse_calendar_duration(std::string_view text);

/// The zone that a TZID means: an IANA name, one behind a prefix, a place that the file gives for
/// it
/// (`places`), or a name of Windows.
std::optional<Zone> zone_of_tzid(const std::string& tzid,
                                 const std::map<std::string, std::string>& places);

/// A rule such as `FREQ=WEEKLY;BYDAY=MO,WE;UNTIL=20271231`, its times in `zone`; else `wrong` says
/// what is wanted.
std::optional<Recurrence> parse_recurrence(std::string_view text, const Zone& zone,
                                           std::string& wrong);

}  // namespace tackfree
