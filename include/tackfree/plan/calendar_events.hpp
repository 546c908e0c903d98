// Calendar events: which a plan has, how they are known again, and which of the last are gone.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// What rings at an event.
struct EventAlarm {
  enum class Rings { before_begin, at_begin, at_end, at };
  Rings rings = Rings::at_begin;
  Instant at = {};  ///< of `at` alone
};

/// One event of a plan, without its words.
struct CalendarEvent {
  enum class What { step, airing, wait_end, milestone };

  std::string uid;
  Interval time;
  What what = What::step;
  /// Index into Schedule::steps, RoomJudgement::stretches, Course::drying or Schedule::outcomes.
  std::size_t index = 0;
  std::size_t part = 0;       ///< piece of the step, or span of the airing
  std::string_view category;  ///< `coating`, `airing`, ...
  std::optional<EventAlarm> alarm = {};

  /// Only work takes up the person's time.
  bool takes_time() const { return what == What::step; }
};

/// Is it one of airings, waits and milestones, which take up no time?
bool is_of_waits(std::string_view category);

/// The revision that the last plan had of an event; nothing where it had none.
const EventState* last_state(const Plan& plan, std::string_view uid);

/// One event for each piece of a step, with the set-up at a session's first coat and the clean-up
/// at its last; for each way the room is open after a stretch of coating; for the end of a coat's
/// wait; and for each milestone. What ends by the plan's now is left out, unless the last plan had
/// it later: then it moves to where it was. UIDs follow from the step's key and the job's id, so
/// that a later plan moves the same events.
std::vector<CalendarEvent> calendar_events(const Plan& plan);

/// The events of the last plan that are not among `events`: those to come are cancelled, one
/// revision higher; those past and those cancelled before stay as they are.
std::vector<EventState> gone_events(const Plan& plan, const std::vector<CalendarEvent>& events);

}  // namespace tackfree
