#include "tackfree/schedule/crew.hpp"

#include "tackfree/schedule/work_time.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <utility>

namespace tackfree {

namespace {

std::vector<std::vector<Interval>> hours_of_each(const Job& job, Interval span) {
  std::vector<std::vector<Interval>> open;
  for (const Person& person : job.people) open.push_back(working_hours(person.hours, span));
  if (open.empty()) open.push_back(working_hours(job.calendar, span));
  return open;
}

/// Work that one person does without a break: pieces of steps that follow each other at a fixed
/// distance, with set-up and clean-up where it is a session's first or last coat, and the cleaning
/// where the tool rests after it.
struct Stint {
  Interval time;
  std::vector<std::pair<std::size_t, std::size_t>> pieces;  ///< step, piece
  std::optional<std::size_t> sets_up;                       ///< the session
  std::optional<std::size_t> cleans_up;                     ///< the session
};

/// The pieces of work to come, steps that belong together in one.
std::vector<Stint> bare_stints(const OperationList& list, const Schedule& schedule) {
  std::map<std::size_t, std::size_t> step_of;  // by operation
  for (std::size_t i = 0; i < schedule.steps.size(); ++i)
    if (!list.operations.at(schedule.steps[i].operation).done)
      step_of[schedule.steps[i].operation] = i;
  std::vector<Stint> stints;
  for (const auto& [operation, i] : step_of) {
    const DatedStep& step = schedule.steps[i];
    if (list.operations.at(operation).right_after && !stints.empty() && operation > 0 &&
        step_of.contains(operation - 1)) {
      stints.back().time.end = step.end();
      stints.back().pieces.emplace_back(i, 0);
      continue;
    }
    for (std::size_t piece = 0; piece < step.pieces.size(); ++piece)
      stints.push_back({.time = step.pieces[piece], .pieces = {{i, piece}}});
  }
  return stints;
}

bool holds(const Stint& stint, std::size_t step) {
  return std::ranges::any_of(stint.pieces, [&](const auto& piece) { return piece.first == step; });
}

bool is_of(const Stint& stint, const Session& session) {
  return std::ranges::any_of(session.steps, [&](std::size_t step) { return holds(stint, step); });
}

/// In order of begin, set-up and clean-up with the first and the last of each session, cleaning
/// with the coat before it.
std::vector<Stint> stints_of(const OperationList& list, const Schedule& schedule) {
  std::vector<Stint> stints = bare_stints(list, schedule);
  for (std::size_t s = 0; s < schedule.sessions.size(); ++s) {
    const Session& session = schedule.sessions[s];
    for (Stint& stint : stints) {
      if (!is_of(stint, session)) continue;
      if (stint.time.begin == session.set_up.end) stint.sets_up = s;
      if (stint.time.end == session.clean_up.begin) stint.cleans_up = s;
    }
  }
  std::vector<bool> set_up(schedule.sessions.size(), false), cleaned = set_up;
  for (Stint& stint : stints) {
    // Two coats may begin or end a session at once: one of them is enough.
    if (stint.sets_up && set_up[*stint.sets_up]) stint.sets_up.reset();
    if (stint.cleans_up && cleaned[*stint.cleans_up]) stint.cleans_up.reset();
    if (stint.sets_up) {
      set_up[*stint.sets_up] = true;
      stint.time.begin = schedule.sessions[*stint.sets_up].set_up.begin;
    }
    if (stint.cleans_up) {
      cleaned[*stint.cleans_up] = true;
      stint.time.end = schedule.sessions[*stint.cleans_up].clean_up.end;
    }
  }
  for (const ToolRest& rest : schedule.tool_rests)
    for (Stint& stint : stints)
      if (holds(stint, rest.dated_step))
        stint.time.end = std::max(stint.time.end, rest.cleaning.end);
  std::stable_sort(stints.begin(), stints.end(),
                   [](const Stint& a, const Stint& b) { return a.time.begin < b.time.begin; });
  return stints;
}

/// Sanding may be handed over when somebody comes or goes: its pieces end there.
void cut_where_people_change(const std::vector<Presence>& there, const OperationList& list,
                             Schedule& schedule) {
  for (DatedStep& step : schedule.steps) {
    if (list.operations.at(step.operation).done) continue;
    std::vector<Interval> pieces;
    for (Interval piece : step.pieces) {
      for (const Presence& presence : there) {
        const Instant end = presence.stretch.end;
        if (end <= piece.begin || end >= piece.end) continue;
        pieces.push_back({piece.begin, end});
        piece.begin = end;
      }
      pieces.push_back(piece);
    }
    step.pieces = std::move(pieces);
  }
}

/// Pieces that touch and are of one person are one.
void join_pieces_of_one(Schedule& schedule) {
  for (DatedStep& step : schedule.steps)
    for (std::size_t i = 1; i < step.by.size();) {
      if (step.pieces[i - 1].end != step.pieces[i].begin || step.by[i - 1] != step.by[i]) {
        ++i;
        continue;
      }
      step.pieces[i - 1].end = step.pieces[i].end;
      step.pieces.erase(step.pieces.begin() + static_cast<std::ptrdiff_t>(i));
      step.by.erase(step.by.begin() + static_cast<std::ptrdiff_t>(i));
    }
}

}  // namespace

std::vector<Presence> presences(const Job& job, Interval span) {
  const auto open = hours_of_each(job, span);
  std::vector<Instant> changes;
  for (const auto& each : open)
    for (const Interval& stretch : each) {
      changes.push_back(stretch.begin);
      changes.push_back(stretch.end);
    }
  std::sort(changes.begin(), changes.end());
  changes.erase(std::unique(changes.begin(), changes.end()), changes.end());
  std::vector<std::size_t> at(open.size(), 0);  // the stretch of each that is not over
  std::vector<Presence> result;
  for (std::size_t c = 1; c < changes.size(); ++c) {
    Presence presence{.stretch = {changes[c - 1], changes[c]}, .people = {}};
    for (std::size_t person = 0; person < open.size(); ++person) {
      const auto& own = open[person];
      while (at[person] < own.size() && own[at[person]].end <= presence.stretch.begin) ++at[person];
      if (at[person] < own.size() && own[at[person]].begin <= presence.stretch.begin)
        presence.people.push_back(person);
    }
    if (!presence.people.empty()) result.push_back(std::move(presence));
  }
  return result;
}

std::vector<Interval> anybodys_hours(const Job& job, Interval span) {
  std::vector<Interval> open;
  for (const Presence& presence : presences(job, span))
    if (!open.empty() && open.back().end == presence.stretch.begin)
      open.back().end = presence.stretch.end;
    else
      open.push_back(presence.stretch);
  return open;
}

void assign_people(const Job& job, const OperationList& list, Schedule& schedule) {
  if (job.people.size() < 2) return;
  const std::vector<Presence> there = presences(job, schedule.span);
  cut_where_people_change(there, list, schedule);
  std::vector<Instant> free_from(job.people.size(), schedule.span.begin);
  std::map<std::size_t, std::size_t> last_of;  // by batch
  for (DatedStep& step : schedule.steps)
    if (!list.operations.at(step.operation).done) step.by.assign(step.pieces.size(), 0);
  for (const Stint& stint : stints_of(list, schedule)) {
    const std::size_t batch =
        list.operations.at(schedule.steps[stint.pieces.front().first].operation).batch;
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
    for (const auto& [step, piece] : stint.pieces) schedule.steps[step].by[piece] = *who;
    if (stint.sets_up) schedule.sessions[*stint.sets_up].set_up_by = *who;
    if (stint.cleans_up) schedule.sessions[*stint.cleans_up].clean_up_by = *who;
  }
  join_pieces_of_one(schedule);
}

}  // namespace tackfree
