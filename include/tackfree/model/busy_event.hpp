// Busy event: one entry of a person's own calendar, and how it repeats.
#pragma once

#include "tackfree/base/time.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// How an event repeats: the part of RFC 5545 (3.3.10) that calendars of people write.
struct Recurrence {
  enum class Every { day, week, month, year };
  /// A weekday, 0 Monday; `nth` of its month, from the end when negative; 0 is every one.
  struct Weekday {
    int nth = 0;
    int weekday = 0;
  };
  Every every = Every::day;
  int interval = 1;               ///< 1 to 10000
  std::optional<int> count;       ///< so many in all, the first counted
  std::optional<Instant> until;   ///< the last one begins no later
  std::optional<Date> until_day;  ///< or on this day of the event's zone at the latest
  std::vector<Weekday> weekdays;
  std::vector<int> month_days;  ///< 1 to 31, or from the end when negative
  std::vector<int> months;      ///< 1 to 12
  std::vector<int> positions;   ///< of those in one period, from the end when negative
  int week_begins_on = 0;       ///< 0 Monday; matters to every second week
};

/// A stretch of time that its person has something else to do.
struct BusyEvent {
  Zone zone = Zone::utc();  ///< of `begin`, and of the days it repeats on
  LocalTime begin;
  /// It lasts to the same clock time so many local days later, and so much longer.
  int days = 0;
  Minutes longer{0};
  std::optional<Recurrence> repeats;
  std::vector<Instant> not_at;  ///< beginnings that are left out: deleted or moved ones
  std::vector<Date> not_on;     ///< local days that are left out
};

}  // namespace tackfree
