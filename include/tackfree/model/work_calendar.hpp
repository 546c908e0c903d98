// Work calendar: when the person can work, when the sander must be quiet.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/model/busy_event.hpp"

#include <array>
#include <vector>

namespace tackfree {

/// A stretch of a local day, minutes after midnight, 0 <= begin < end <= 1440.
struct DayWindow {
  int begin = 0;
  int end = 0;
  friend auto operator<=>(const DayWindow&, const DayWindow&) = default;
};

struct AddedHours {
  Date on;
  std::vector<DayWindow> windows;
};

/// Local working hours. Windows of a day do not overlap and are in order.
struct WorkCalendar {
  Zone zone = Zone::utc();
  std::array<std::vector<DayWindow>, 7> weekly;  ///< 0 is Monday
  std::vector<Date> days_off;
  std::vector<AddedHours> added;            ///< besides the weekly hours; also on days off
  std::vector<DayWindow> no_power_sanding;  ///< every day; a window over midnight is two
  int late_after = 21 * 60;                 ///< work after this clock time is late (minutes)
  std::vector<BusyEvent> busy;              ///< no work while one of them is on
  std::vector<Interval> busy_hours;         ///< the same worked out for the days of the plan
  std::vector<Interval> freed;              ///< work may be done then, whatever else says not
};

}  // namespace tackfree
