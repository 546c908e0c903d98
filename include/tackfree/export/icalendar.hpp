// Calendar file: the plan as iCalendar events: work and waits with alarms, airings, milestones.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>
#include <string_view>

namespace tackfree {

/// Which events a calendar has: the person's own work, what comes by itself, or both.
enum class Feed { all, work, waits };

/// The plan by RFC 5545, in UTC, as of `plan.now`. What ends before then is left out.
///
/// One event for each piece of a step; set-up belongs to the event of a session's first coat,
/// clean-up to that of its last. Events that begin after now have an alarm 30 minutes before.
/// All else takes up no time. An airing is an event for each way the room is open, with an alarm at
/// its end. The end of a coat's wait is an event of 15 minutes, with an alarm then or, where that
/// is not in the person's hours, at the beginning of the next ones. Milestones of a batch are
/// events of 15 minutes without an alarm. UIDs follow from the step's key and the job's id, so that
/// a later plan moves the same events: `KEY.JOB@tackfree.invalid`, and `KEY.2.JOB@...` for the
/// second piece of a step. Text of the person is cleaned, so that it can neither end a line nor
/// start a property.
/// Events are revised as `revised_events` has it; one to come that is gone is there once more as
/// cancelled: RFC 5545, 3.8.1.11.
std::string calendar_report(const Plan& plan, Feed feed = Feed::all);

}  // namespace tackfree
