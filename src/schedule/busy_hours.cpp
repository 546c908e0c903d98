#include "tackfree/schedule/busy_hours.hpp"

#include "tackfree/schedule/rule_days.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

using Day = date::sys_days;

/// Adds the stretches of one event.
class EventHours {
 public:
  EventHours(const BusyEvent& event, Interval span, std::vector<Interval>& found)
      : event_(event), span_(span), found_(found) {}

  void add() {
    add_at(event_.zone, event_.begin);
    for (const BusyBegin& each : event_.also) add_at(each.zone, each.at);
    if (event_.repeats) add_by(*event_.repeats);
  }

 private:
  void add_by(const Recurrence& rule) {
    const RuleDays days(rule, event_.begin.on);
    const Day last(event_.zone.local(span_.end).on);
    const int before = event_.days + static_cast<int>(event_.longer / one_day) + 2;
    const Day wanted = Day(event_.zone.local(span_.begin).on) - date::days(before);
    int period = days.period_at(wanted);
    std::int64_t left = rule.count ? *rule.count - 1 - days.days_before(period) : 0;
    std::vector<Day> on;
    for (; days.period_begin(period) <= last; ++period) {
      days.days_in(period, on);
      for (const Day day : on) {
        if (day <= Day(event_.begin.on)) continue;
        if (rule.count && left-- <= 0) return;
        if (is_over(rule, day) || day > last) return;
        // Long events that repeat often are on all the time: one that fills the span is enough.
        if (day >= wanted && add_at(event_.zone, {Date(day), event_.begin.minute_of_day})) return;
      }
    }
  }

  bool is_over(const Recurrence& rule, Day day) const {
    if (rule.until_day && day > Day(*rule.until_day)) return true;
    return rule.until && event_.zone.instant({Date(day), event_.begin.minute_of_day}) > *rule.until;
  }

  bool is_left_out(Instant begin, Date on) const {
    return event_.left_out.holds(begin, on) || (event_.moved && event_.moved->holds(begin, on));
  }

  /// True when it fills the whole span.
  bool add_at(const Zone& zone, const LocalTime& local) {
    const Instant begin = zone.instant(local);
    if (is_left_out(begin, local.on)) return false;
    const Instant end =
        zone.instant({add_days(local.on, event_.days), local.minute_of_day}) + event_.longer;
    const Interval stretch{std::max(begin, span_.begin), std::min(end, span_.end)};
    if (stretch.begin < stretch.end) found_.push_back(stretch);
    return stretch == span_;
  }

  const BusyEvent& event_;
  Interval span_;
  std::vector<Interval>& found_;
};

}  // namespace

std::vector<Interval> busy_hours(const std::vector<BusyEvent>& events, Interval span) {
  std::vector<Interval> found;
  for (const BusyEvent& event : events) EventHours(event, span, found).add();
  return joined(std::move(found));
}

std::vector<Interval> busy_hours(const WorkCalendar& calendar, Interval span) {
  std::vector<Interval> found = busy_hours(calendar.busy, span);
  for (const Interval& each : calendar.busy_hours) {
    const Interval stretch{std::max(each.begin, span.begin), std::min(each.end, span.end)};
    if (stretch.begin < stretch.end) found.push_back(stretch);
  }
  return joined(std::move(found));
}

void settle_busy_hours(Job& job, Interval span, Problems& problems) {
  const Interval around{span.begin - 7 * one_day, span.end + 7 * one_day};
  auto settle = [&](WorkCalendar& calendar, const std::string& whose) {
    calendar.busy_hours = busy_hours(calendar, around);
    calendar.busy.clear();
    if (calendar.busy_hours.size() <= most_busy_stretches) return;
    problems.push_back(
        {.key = "busy_files",
         .found = fmt::format("{} busy stretches in the days of the plan{}",
                              calendar.busy_hours.size(), whose),
         .wanted = fmt::format("wanted at most {}", most_busy_stretches),
         .hint = "export fewer calendars, or plan fewer days ahead with \"horizon_days\""});
  };
  settle(job.calendar, "");
  for (Person& person : job.people) settle(person.hours, ", " + person.name);
}

}  // namespace tackfree
