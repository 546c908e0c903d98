// Event revisions: what each calendar event says by now, and how often that has changed.
#pragma once

#include "tackfree/plan/calendar_events.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// An event at its revision.
struct RevisedEvent {
  EventState state;
  std::string body;  ///< its properties but identity and times; of one that is past, empty
};

/// All events of the plan, then those of its last plan that are gone. An event that says or lies
/// anything else than its last revision has a SEQUENCE higher by one: RFC 5545, 3.8.7.4. What an
/// event says is its body, so that no change in the file goes without a revision.
std::vector<RevisedEvent> revised_events(const Plan& plan);

/// Their revisions alone, for the next plan.
std::vector<EventState> calendar_states(const Plan& plan);

}  // namespace tackfree
