#include "tackfree/plan/calendar_events.hpp"

#include "tackfree/base/fingerprint.hpp"
#include "tackfree/base/name.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

using What = CalendarEvent::What;
using Rings = EventAlarm::Rings;

constexpr std::size_t longest_uid_part = 80;
constexpr Minutes milestone_length{15};

/// A key whose parts are slugs joined by dots; one that is too long ends in a hash of all of it.
std::string uid_part(std::string_view key) {
  std::string text;
  std::string_view rest = key;
  while (true) {
    const std::size_t slash = std::min(rest.find('/'), rest.size());
    text += slug(rest.substr(0, slash));
    if (slash == rest.size()) break;
    text += '.';
    rest.remove_prefix(slash + 1);
  }
  if (text.size() <= longest_uid_part) return text;
  return fmt::format("{}-{}", text.substr(0, longest_uid_part - 17), fingerprint(key));
}

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

/// The piece, with the set-up before a session's first coat and the clean-up after its last.
Interval with_session(const Plan& plan, std::size_t step, Interval piece) {
  const DatedStep& dated = plan.schedule.steps.at(step);
  if (!dated.session) return piece;
  const Session& session = plan.schedule.sessions.at(*dated.session);
  if (session.steps.front() == step) piece.begin = std::min(piece.begin, session.set_up.begin);
  if (session.steps.back() == step) piece.end = std::max(piece.end, session.clean_up.end);
  return piece;
}

/// Part of a UID: it stays, however the stage is said.
std::string_view key_of(Stage stage) {
  switch (stage) {
    case Stage::dust_free:
      return "dust-free";
    case Stage::touch:
      return "touch-dry";
    case Stage::handle:
      return "dry to handle";
    case Stage::recoat:
      return "dry to recoat";
    case Stage::sand:
      return "dry to sand";
    case Stage::light_use:
      return "light use";
    case Stage::hardware:
      return "hardware";
    case Stage::stack:
      return "stacking";
    case Stage::full_cure:
      break;
  }
  return "full cure";
}

/// When the end of a wait rings: then, or at the beginning of the person's next hours; not at all
/// where there are no more.
std::optional<EventAlarm> alarm_in_hours(const Plan& plan, Instant at) {
  for (const Interval& hours : plan.course.working)
    if (hours.end > at)
      return hours.begin <= at ? EventAlarm{Rings::at_begin} : EventAlarm{Rings::at, hours.begin};
  return std::nullopt;
}

/// Goes through the plan and gives each event its UID.
class Events {
 public:
  explicit Events(const Plan& plan) : plan_(plan) {}

  std::vector<CalendarEvent> all() {
    for (std::size_t step = 0; step < plan_.schedule.steps.size(); ++step) add_step(step);
    if (plan_.room)
      for (std::size_t i = 0; i < plan_.room->stretches.size(); ++i) add_airing(i);
    for (std::size_t i = 0; i < plan_.course.drying.size(); ++i) add_wait_end(i);
    for (std::size_t i = 0; i < plan_.schedule.outcomes.size(); ++i) add_milestone(i);
    return std::move(events_);
  }

 private:
  const Operation& operation(std::size_t step) const {
    return plan_.list.operations.at(plan_.schedule.steps.at(step).operation);
  }

  void add_step(std::size_t index) {
    const DatedStep& step = plan_.schedule.steps[index];
    const Operation& op = operation(index);
    for (std::size_t i = 0; i < step.pieces.size(); ++i) {
      CalendarEvent event{.time = with_session(plan_, index, step.pieces[i]),
                          .what = What::step,
                          .index = index,
                          .part = i,
                          .category = category_of(op.kind)};
      if (event.time.end <= event.time.begin) continue;
      if (event.time.begin > plan_.now) event.alarm = EventAlarm{Rings::before_begin};
      add(std::move(event), i == 0 ? op.key : fmt::format("{}/{}", op.key, i + 1));
    }
  }

  /// Known by the first coat of the stretch.
  void add_airing(std::size_t index) {
    constexpr std::array<std::string_view, 4> keys{"closed", "ajar", "open", "open and fan"};
    const StretchJudgement& stretch = plan_.room->stretches[index];
    const Operation& first = operation(stretch.steps.front());
    for (std::size_t i = 0; i < stretch.airing.size(); ++i) {
      const AiringSpan& span = stretch.airing[i];
      add({.time = span.time,
           .what = What::airing,
           .index = index,
           .part = i,
           .category = "airing",
           .alarm = EventAlarm{Rings::at_end}},
          fmt::format("{}/airing/{}", first.key, keys.at(static_cast<std::size_t>(span.opening))));
    }
  }

  void add_wait_end(std::size_t index) {
    const DryingCourse& drying = plan_.course.drying[index];
    add({.time = {drying.time.end, drying.time.end + milestone_length},
         .what = What::wait_end,
         .index = index,
         .category = "waiting",
         .alarm = alarm_in_hours(plan_, drying.time.end)},
        operation(drying.dated_step).key + "/wait-end");
  }

  void add_milestone(std::size_t index) {
    const DatedOutcome& outcome = plan_.schedule.outcomes[index];
    if (!outcome.at) return;
    add({.time = {*outcome.at, *outcome.at + milestone_length},
         .what = What::milestone,
         .index = index,
         .category = "milestone"},
        fmt::format("{}/milestone/{}", plan_.job.batches.at(outcome.batch).name,
                    key_of(outcome.stage)));
  }

  void add(CalendarEvent event, const std::string& key) {
    event.uid = uid_of(key);
    const EventState* last = last_state(plan_, event.uid);
    const bool is_past = event.time.end <= plan_.now;
    if (is_past && (last == nullptr || last->cancelled || last->time.end <= plan_.now)) return;
    events_.push_back(std::move(event));
  }

  /// Names that differ only in signs give the same key: later ones are numbered.
  std::string uid_of(const std::string& key) {
    std::string part = uid_part(key);
    for (int number = 2; !used_.insert(part).second; ++number)
      part = fmt::format("{}-again-{}", uid_part(key), number);
    return fmt::format("{}.{}@tackfree.invalid", part, uid_part(plan_.job.id));
  }

  const Plan& plan_;
  std::set<std::string> used_;
  std::vector<CalendarEvent> events_;
};

}  // namespace

bool is_of_waits(std::string_view category) {
  return category == "airing" || category == "waiting" || category == "milestone";
}

const EventState* last_state(const Plan& plan, std::string_view uid) {
  if (!plan.job.last_plan) return nullptr;
  const auto& events = plan.job.last_plan->events;
  const auto found = std::ranges::find(events, uid, &EventState::uid);
  return found == events.end() ? nullptr : &*found;
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
