#include "tackfree/logged/logged_hours.hpp"

#include <string>
#include <utility>

namespace tackfree {

namespace {

struct LoggedHours {
  std::vector<Interval> away, free;
};

/// The hours of one person as the log has them; an empty name stands for the only one.
LoggedHours logged_hours(const History& history, Instant now, const std::string& person) {
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
  return {std::move(away), std::move(free)};
}

void apply(LoggedHours hours, WorkCalendar& calendar) {
  calendar.busy_hours.insert(calendar.busy_hours.end(), hours.away.begin(), hours.away.end());
  calendar.freed = std::move(hours.free);
}

}  // namespace

void apply_logged_hours(Job& job, Instant now) {
  apply(logged_hours(job.history, now, ""), job.calendar);
  for (Person& person : job.people)
    apply(logged_hours(job.history, now, person.name), person.hours);
}

std::vector<Interval> logged_away(const Job& job, Instant now) {
  if (job.people.empty()) return logged_hours(job.history, now, "").away;
  std::vector<Interval> all = logged_hours(job.history, now, job.people.front().name).away;
  for (const Person& person : job.people)
    all = without(all, without(all, logged_hours(job.history, now, person.name).away));
  return all;
}

}  // namespace tackfree
