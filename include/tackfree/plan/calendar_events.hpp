// Calendar events: which a plan has, how they are known again, and which of the last are gone.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/schedule/work_sessions.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// When an event rings: its lead time before it, to get ready, or on the minute.
enum class EventAlarm { before_begin, at_begin };

/// One event of a plan, without its words.
struct CalendarEvent {
  enum class What {
    session,   ///< a session of work
    wipe_off,  ///< what was put on comes off again
    pot_end,   ///< what was mixed hardens while it is still in use
    close_up,  ///< airing is over, by day
    ready,     ///< a batch may be used lightly
    cured      ///< a batch is fully cured
  };

  std::string uid;
  Interval time;
  What what = What::session;
  /// Index into Schedule::steps (wipe_off, pot_end), Schedule::outcomes (ready, cured), or the
  /// airings of advised_airing (close_up).
  std::size_t index = 0;
  WorkSession work = {};      ///< of a session; of what cannot wait its people alone
  std::string_view category;  ///< `coating`, `airing`, ...
  std::optional<EventAlarm> alarm = {};
  std::optional<std::size_t> who = {};  ///< whose own calendar it is in; nothing: everybody's

  /// Only work takes up the person's time.
  bool takes_time() const { return what == What::session; }
};

/// The revision that the last plan had of an event; nothing where it had none.
const EventState* last_state(const Plan& plan, std::string_view uid);

/// Is closing up left to the morning, without an alarm: from 11 pm to 6 am?
bool is_at_night(Instant at, const Zone& zone);

/// The airings of advised_airing that are on at some time of the session.
std::vector<std::size_t> airings_in(const std::vector<std::vector<AiringSpan>>& airings,
                                    const WorkSession& session);

/// Everybody's calendar, then, where there are several people, that of each. One event for each
/// session of work with an alarm before it; one with an alarm on the minute for what cannot wait:
/// wiping off, the end of a pot that is still in use, closing up after airing by day; and one
/// without alarm for each batch that is ready and that is cured, from a full hour. What ends by the
/// plan's now is left out, unless the last plan had it later: then it moves to where it was. The
/// UID of a session follows from the key of its first coat, or of its first step where it has none,
/// and from the job's id, so that a later plan moves the same event.
std::vector<CalendarEvent> calendar_events(const Plan& plan);

/// The events of the last plan that are not among `events`: those to come are cancelled, one
/// revision higher; those past and those cancelled before stay as they are.
std::vector<EventState> gone_events(const Plan& plan, const std::vector<CalendarEvent>& events);

}  // namespace tackfree
