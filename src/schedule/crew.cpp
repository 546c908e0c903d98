#include "tackfree/schedule/crew.hpp"

#include "tackfree/schedule/work_time.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>

namespace tackfree {

namespace {

std::vector<std::vector<Interval>> hours_of_each(const Job& job, Interval span) {
  std::vector<std::vector<Interval>> hours;
  for (const Person& person : job.people) hours.push_back(working_hours(person.hours, span));
  if (hours.empty()) hours.push_back(working_hours(job.calendar, span));
  return hours;
}

/// Work that one person does without a break: a piece of a step, with set-up and clean-up where it
/// is a session's first or last coat.
struct Stint {
  Interval time;
  std::size_t step = 0;
  std::size_t piece = 0;
  std::optional<std::size_t> sets_up;    ///< the session
  std::optional<std::size_t> cleans_up;  ///< the session
};

std::vector<Stint> stints_of(const Schedule& schedule) {
  std::vector<Stint> stints;
  std::map<std::size_t, std::size_t> first_of, last_of;  // by step, the session
  for (std::size_t s = 0; s < schedule.sessions.size(); ++s) {
    const auto& steps = schedule.sessions[s].steps;
    const auto begins = [&](std::size_t a, std::size_t b) {
      return schedule.steps[a].begin() < schedule.steps[b].begin();
    };
    const auto ends = [&](std::size_t a, std::size_t b) {
      return schedule.steps[a].end() < schedule.steps[b].end();
    };
    if (steps.empty()) continue;
    first_of[*std::min_element(steps.begin(), steps.end(), begins)] = s;
    last_of[*std::max_element(steps.begin(), steps.end(), ends)] = s;
  }
  for (std::size_t i = 0; i < schedule.steps.size(); ++i) {
    const DatedStep& step = schedule.steps[i];
    for (std::size_t piece = 0; piece < step.pieces.size(); ++piece) {
      Stint stint{.time = step.pieces[piece], .step = i, .piece = piece};
      if (const auto first = first_of.find(i); first != first_of.end()) {
        stint.sets_up = first->second;
        stint.time.begin =
            std::min(stint.time.begin, schedule.sessions[first->second].set_up.begin);
      }
      if (const auto last = last_of.find(i); last != last_of.end()) {
        stint.cleans_up = last->second;
        stint.time.end = std::max(stint.time.end, schedule.sessions[last->second].clean_up.end);
      }
      stints.push_back(stint);
    }
  }
  std::stable_sort(stints.begin(), stints.end(),
                   [](const Stint& a, const Stint& b) { return a.time.begin < b.time.begin; });
  return stints;
}

}  // namespace

std::vector<Presence> presences(const Job& job, Interval span) {
  const auto hours = hours_of_each(job, span);
  std::vector<Instant> changes;
  for (const auto& each : hours)
    for (const Interval& stretch : each) {
      changes.push_back(stretch.begin);
      changes.push_back(stretch.end);
    }
  std::sort(changes.begin(), changes.end());
  changes.erase(std::unique(changes.begin(), changes.end()), changes.end());
  std::vector<std::size_t> at(hours.size(), 0);  // the stretch of each that is not over
  std::vector<Presence> result;
  for (std::size_t c = 1; c < changes.size(); ++c) {
    Presence presence{.stretch = {changes[c - 1], changes[c]}, .people = {}};
    for (std::size_t person = 0; person < hours.size(); ++person) {
      const auto& own = hours[person];
      while (at[person] < own.size() && own[at[person]].end <= presence.stretch.begin) ++at[person];
      if (at[person] < own.size() && own[at[person]].begin <= presence.stretch.begin)
        presence.people.push_back(person);
    }
    if (!presence.people.empty()) result.push_back(std::move(presence));
  }
  return result;
}

std::vector<Interval> anybodys_hours(const Job& job, Interval span) {
  std::vector<Interval> hours;
  for (const Presence& presence : presences(job, span))
    if (!hours.empty() && hours.back().end == presence.stretch.begin)
      hours.back().end = presence.stretch.end;
    else
      hours.push_back(presence.stretch);
  return hours;
}

void assign_people(const Job& job, const OperationList& list, Schedule& schedule) {
  if (job.people.size() < 2) return;
  const std::vector<Presence> there = presences(job, schedule.span);
  std::vector<Instant> free_from(job.people.size(), schedule.span.begin);
  std::map<std::size_t, std::size_t> last_of;  // by batch
  for (DatedStep& step : schedule.steps) step.by.assign(step.pieces.size(), 0);
  for (const Stint& stint : stints_of(schedule)) {
    DatedStep& step = schedule.steps[stint.step];
    const std::size_t batch = list.operations.at(step.operation).batch;
    const auto presence = std::find_if(there.begin(), there.end(), [&](const Presence& p) {
      return p.stretch.begin <= stint.time.begin && stint.time.end <= p.stretch.end;
    });
    if (presence == there.end()) throw std::logic_error("work in nobody's hours");
    std::optional<std::size_t> who;
    for (const std::size_t person : presence->people) {
      if (free_from[person] > stint.time.begin) continue;
      const auto last = last_of.find(batch);
      if (!who || (last != last_of.end() && last->second == person)) who = person;
    }
    if (!who) throw std::logic_error("more work at once than people");
    free_from[*who] = stint.time.end;
    last_of[batch] = *who;
    step.by[stint.piece] = *who;
    if (stint.sets_up) schedule.sessions[*stint.sets_up].set_up_by = *who;
    if (stint.cleans_up) schedule.sessions[*stint.cleans_up].clean_up_by = *who;
  }
}

}  // namespace tackfree
