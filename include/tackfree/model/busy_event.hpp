// Busy event: one entry of a person's own calendar, and how it repeats.
#pragma once

#include "tackfree/base/time.hpp"

#include <algorithm>
#include <memory>
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

/// Beginnings of an event that do not count: deleted ones, or moved ones. Both lists are in order.
struct LeftOut {
  std::vector<Instant> at;
  std::vector<Date> on;  ///< local days

  bool holds(Instant begin, Date day) const {
    return std::binary_search(at.begin(), at.end(), begin) ||
           std::binary_search(on.begin(), on.end(), day);
  }
  void sort() {
    std::sort(at.begin(), at.end());
    std::sort(on.begin(), on.end());
  }
};

/// One more begin of an event, besides its own and those of its rule.
struct BusyBegin {
  Zone zone;
  LocalTime at;
};

/// A stretch of time that its person has something else to do.
struct BusyEvent {
  Zone zone = Zone::utc();  ///< of `begin`, and of the days it repeats on
  LocalTime begin;
  std::vector<BusyBegin> also;
  /// It lasts to the same clock time so many local days later, and so much longer.
  int days = 0;
  Minutes longer{0};
  std::optional<Recurrence> repeats;
  LeftOut left_out;
  /// Moved instances have an event of their own; one list for all entries of one event.
  std::shared_ptr<const LeftOut> moved;
};

}  // namespace tackfree
