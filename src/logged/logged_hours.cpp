#include "tackfree/logged/logged_hours.hpp"

#include <algorithm>
#include <vector>

namespace tackfree {

namespace {

/// The hours of one person as the log has them; an empty name stands for the only one.
void apply(const History& history, Instant now, const std::string& person, WorkCalendar& calendar) {
  std::vector<Interval> away, free;
  for (const LogEntry& entry : history.entries) {
    if (!entry.hours || entry.at > now) continue;
    if (!entry.person.empty() && entry.person != person) continue;
    const bool leaves = entry.kind == LogKind::away;
    std::vector<Interval>& told = leaves ? away : free;
    std::vector<Interval>& other = leaves ? free : away;
    told.push_back(*entry.hours);
    told = joined(std::move(told));
    other = without(other, {*entry.hours});
  }
  calendar.busy_hours.insert(calendar.busy_hours.end(), away.begin(), away.end());
  calendar.freed = std::move(free);
}

}  // namespace

void apply_logged_hours(Job& job, Instant now) {
  apply(job.history, now, "", job.calendar);
  for (Person& person : job.people) apply(job.history, now, person.name, person.hours);
}

}  // namespace tackfree
