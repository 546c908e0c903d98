#include "tackfree/plan/calendar_events.hpp"

#include "tackfree/plan/advised_airing.hpp"
#include "tackfree/plan/event_uids.hpp"
#include "tackfree/plan/full_hour.hpp"
#include "tackfree/plan/pot_end.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

using What = CalendarEvent::What;

constexpr Minutes moment_length{15};

std::string_view category_of(OperationKind kind) {
  switch (kind) {
    case OperationKind::coat:
    case OperationKind::wipe_off:
      return "coating";
    case OperationKind::sand_bare:
    case OperationKind::sand_raised:
    case OperationKind::sand_filler:
    case OperationKind::sand_between:
      return "sanding";
    case OperationKind::raise_grain:
    case OperationKind::fill_pores:
    case OperationKind::dust_off:
    case OperationKind::repair:
      return "preparing";
    case OperationKind::turn_over:
    case OperationKind::fit_hardware:
    case OperationKind::finishing_touch:
      break;
  }
  return "handling";
}

/// By the gravest of its work: coats before sanding before the rest.
std::string_view category_of(const WorkSession& session) {
  std::string_view category = "handling";
  for (const WorkTask& task : session.tasks) {
    const auto* kind = std::get_if<OperationKind>(&task.kind);
    const std::string_view own = kind != nullptr ? category_of(*kind) : category;
    for (const std::string_view graver : {"preparing", "sanding", "coating"})
      if (own == graver || category == graver) category = graver;
  }
  return category;
}

/// Goes through the plan and gives each event its UID.
class Events {
 public:
  explicit Events(const Plan& plan)
      : plan_(plan), airings_(advised_airing(plan)), uids_(plan.job.id) {}

  std::vector<CalendarEvent> all() {
    add_calendar(std::nullopt);
    if (plan_.job.people.size() > 1)
      for (std::size_t who = 0; who < plan_.job.people.size(); ++who) add_calendar(who);
    return std::move(events_);
  }

 private:
  const Operation& operation(std::size_t step) const {
    return plan_.list.operations.at(plan_.schedule.steps.at(step).operation);
  }

  bool concerns(const std::optional<std::size_t>& person) const {
    return !who_ || !person || person == who_;
  }

  static WorkSession by(const std::optional<std::size_t>& who) {
    WorkSession work;
    if (who) work.people = {*who};
    return work;
  }

  void add_calendar(std::optional<std::size_t> who) {
    who_ = who;
    for (WorkSession& session :
         work_sessions(plan_.list, plan_.schedule, {.who = who, .with_done = true}))
      add_session(std::move(session));
    for (std::size_t step = 0; step < plan_.schedule.steps.size(); ++step) add_clocks(step);
    for (std::size_t i = 0; i < airings_.size(); ++i) add_close_up(i);
    for (std::size_t i = 0; i < plan_.schedule.outcomes.size(); ++i) add_outcome(i);
  }

  /// The first coat of the session, else its first step, by key; the later pieces of a step by
  /// number.
  std::string key_of(const WorkSession& session) const {
    const WorkTask* known_by = nullptr;
    for (const WorkTask& task : session.tasks) {
      if (task.is_of_tools()) continue;
      const bool coats = task.kind == KindOfWork(OperationKind::coat);
      if (known_by == nullptr || coats) known_by = &task;
      if (coats) return operation(task.steps.back()).key;
    }
    if (known_by == nullptr) return {};
    const std::string& key = operation(known_by->steps.front()).key;
    return known_by->first_piece == 0 ? key : fmt::format("{}/{}", key, known_by->first_piece + 1);
  }

  void add_session(WorkSession session) {
    const std::string key = key_of(session);
    if (key.empty()) return;  // tools alone
    CalendarEvent event{
        .time = session.time, .what = What::session, .work = {}, .category = category_of(session)};
    event.work = std::move(session);
    if (event.time.begin > plan_.now) event.alarm = EventAlarm::before_begin;
    add(std::move(event), key + "/session");
  }

  void add_clocks(std::size_t index) {
    const DatedStep& step = plan_.schedule.steps[index];
    const Operation& work = operation(index);
    if (work.done || step.pieces.empty()) return;
    const auto who = step.by.empty() ? std::nullopt : std::optional(step.by.front());
    if (!concerns(who)) return;
    if (work.kind == OperationKind::wipe_off)
      add_exact({.time = {step.begin(), step.end()},
                 .what = What::wipe_off,
                 .index = index,
                 .work = by(who),
                 .category = "coating"},
                work.key + "/wipe-off");
    if (work.kind != OperationKind::coat || !step.session) return;
    const auto hardens = pot_end(plan_, step.operation, step.begin());
    if (hardens && *hardens < plan_.schedule.sessions.at(*step.session).clean_up.end)
      add_exact({.time = {*hardens, *hardens + moment_length},
                 .what = What::pot_end,
                 .index = index,
                 .work = by(who),
                 .category = "coating"},
                work.key + "/pot-end");
  }

  /// Known by the first coat of the airing; closed by whoever cleaned up last before it.
  void add_close_up(std::size_t index) {
    const Instant begin = airings_[index].front().time.begin;
    const Instant end = airings_[index].back().time.end;
    if (is_at_night(end, plan_.job.calendar.zone)) return;
    const Operation* first = nullptr;
    for (const CoatingStretch& stretch : coating_stretches(plan_.list, plan_.schedule))
      if (first == nullptr && begin <= stretch.time.begin && stretch.time.begin < end)
        first = &operation(stretch.steps.front());
    std::optional<std::size_t> closes;
    for (const Session& session : plan_.schedule.sessions)
      if (session.set_up.begin < end) closes = session.clean_up_by;
    if (first == nullptr || !concerns(closes)) return;
    add_exact({.time = {end, end + moment_length},
               .what = What::close_up,
               .index = index,
               .work = by(closes),
               .category = "airing"},
              first->key + "/close-up");
  }

  /// Rings on its minute, if that is still to come.
  void add_exact(CalendarEvent event, const std::string& key) {
    if (event.time.begin > plan_.now) event.alarm = EventAlarm::at_begin;
    add(std::move(event), key);
  }

  void add_outcome(std::size_t index) {
    const DatedOutcome& outcome = plan_.schedule.outcomes[index];
    const bool is_ready = outcome.stage == Stage::light_use;
    if (!outcome.at || (!is_ready && outcome.stage != Stage::full_cure)) return;
    const Instant at = full_hour_up(*outcome.at, plan_.job.calendar.zone);
    add({.time = {at, at + moment_length},
         .what = is_ready ? What::ready : What::cured,
         .index = index,
         .category = "milestone"},
        fmt::format("{}/milestone/{}", plan_.job.batches.at(outcome.batch).name,
                    is_ready ? "light use" : "full cure"));
  }

  void add(CalendarEvent event, const std::string& key) {
    event.who = who_;
    event.uid =
        uids_.uid_of(who_ ? fmt::format("{}/for/{}", key, plan_.job.people.at(*who_).name) : key);
    const EventState* last = last_state(plan_, event.uid);
    const bool is_past = event.time.end <= plan_.now;
    if (is_past && (last == nullptr || last->cancelled || last->time.end <= plan_.now)) return;
    events_.push_back(std::move(event));
  }

  const Plan& plan_;
  std::vector<std::vector<AiringSpan>> airings_;
  std::optional<std::size_t> who_;
  EventUids uids_;
  std::vector<CalendarEvent> events_;
};

}  // namespace

const EventState* last_state(const Plan& plan, std::string_view uid) {
  if (!plan.job.last_plan) return nullptr;
  const auto& events = plan.job.last_plan->events;
  const auto found = std::ranges::find(events, uid, &EventState::uid);
  return found == events.end() ? nullptr : &*found;
}

bool is_at_night(Instant at, const Zone& zone) {
  constexpr int from = 23 * 60, until = 6 * 60;
  const int minute = zone.local(at).minute_of_day;
  return minute >= from || minute < until;
}

std::vector<std::size_t> airings_in(const std::vector<std::vector<AiringSpan>>& airings,
                                    const WorkSession& session) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < airings.size(); ++i)
    if (airings[i].front().time.begin < session.time.end &&
        session.time.begin < airings[i].back().time.end)
      found.push_back(i);
  return found;
}

std::vector<CalendarEvent> calendar_events(const Plan& plan) { return Events(plan).all(); }

std::vector<EventState> gone_events(const Plan& plan, const std::vector<CalendarEvent>& events) {
  std::vector<EventState> gone;
  if (!plan.job.last_plan) return gone;
  std::set<std::string_view> known;
  for (const CalendarEvent& event : events) known.insert(event.uid);
  for (EventState state : plan.job.last_plan->events) {
    if (known.contains(state.uid)) continue;
    if (!state.cancelled && state.time.end > plan.now) {
      ++state.sequence;
      state.cancelled = true;
    }
    gone.push_back(std::move(state));
  }
  return gone;
}

}  // namespace tackfree
