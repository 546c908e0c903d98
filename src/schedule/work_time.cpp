#include "tackfree/schedule/work_time.hpp"

#include "tackfree/schedule/busy_hours.hpp"

#include <algorithm>

namespace tackfree {

namespace {

void add_windows(const Zone& zone, Date on, const std::vector<DayWindow>& windows, Interval span,
                 std::vector<Interval>& found) {
  for (const DayWindow& window : windows) {
    const Instant begin = zone.instant({on, window.begin});
    const Instant end =
        window.end == 24 * 60 ? zone.instant({next_day(on), 0}) : zone.instant({on, window.end});
    const Interval stretch{std::max(begin, span.begin), std::min(end, span.end)};
    if (stretch.begin < stretch.end) found.push_back(stretch);
  }
}

/// Every local date that `span` touches.
std::vector<Date> dates_of(const Zone& zone, Interval span) {
  std::vector<Date> dates;
  const Date last = zone.local(span.end).on;
  for (Date on = zone.local(span.begin).on; on <= last; on = next_day(on)) dates.push_back(on);
  return dates;
}

}  // namespace

std::vector<Interval> working_hours(const WorkCalendar& calendar, Interval span) {
  std::vector<Interval> found;
  for (const Date on : dates_of(calendar.zone, span)) {
    const auto& off = calendar.days_off;
    if (std::find(off.begin(), off.end(), on) == off.end())
      add_windows(calendar.zone, on, calendar.weekly[static_cast<std::size_t>(weekday_index(on))],
                  span, found);
    for (const AddedHours& added : calendar.added)
      if (added.on == on) add_windows(calendar.zone, on, added.windows, span, found);
  }
  std::vector<Interval> open = without(joined(std::move(found)), busy_hours(calendar, span));
  for (const Interval& each : calendar.freed) {
    const Interval stretch{std::max(each.begin, span.begin), std::min(each.end, span.end)};
    if (stretch.begin < stretch.end) open.push_back(stretch);
  }
  return joined(std::move(open));
}

std::vector<Interval> daily_hours(const WorkCalendar& calendar,
                                  const std::vector<DayWindow>& windows, Interval span) {
  std::vector<Interval> found;
  for (const Date on : dates_of(calendar.zone, span))
    add_windows(calendar.zone, on, windows, span, found);
  return joined(std::move(found));
}

}  // namespace tackfree
