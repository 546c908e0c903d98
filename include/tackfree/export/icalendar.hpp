// Calendar file: the plan as iCalendar events: sessions of work, what cannot wait, what is ready.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <optional>
#include <string>

namespace tackfree {

/// The plan by RFC 5545, in UTC, as of `plan.now`. What ends before then is left out.
///
/// One event for each session of work, with an alarm 30 minutes before; it alone takes up time.
/// Wiping off, a pot that ends while it is in use and closing up by day are events with an alarm on
/// their minute; a batch that is ready, or cured, is one without. UIDs follow from the key of the
/// session's first coat, or first step, and from the job's id, so that a later plan moves the same
/// events: `KEY.session.JOB@tackfree.invalid`. Text of the person is cleaned, so that it can
/// neither end a line nor start a property.
/// Events are revised as `revised_events` has it; one to come that is gone is there once more as
/// cancelled: RFC 5545, 3.8.1.11.
/// `who` is an index into Job::people, where there are several: that person's own calendar, whose
/// UIDs have `for.PERSON` before the job's. Nothing: everybody's.
std::string calendar_report(const Plan& plan, std::optional<std::size_t> who = {});

}  // namespace tackfree
