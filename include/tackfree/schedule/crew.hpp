// Crew: which of the people are there when, and who does which piece of work.
#pragma once

#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

/// A stretch of working hours in which the same people are there.
struct Presence {
  Interval stretch;
  std::vector<std::size_t> people;  ///< indices into Job::people, or 0 for the only person
};

/// Every stretch within `span` with somebody there, in order; a new one begins whenever somebody
/// comes or goes.
std::vector<Presence> presences(const Job& job, Interval span);

/// The hours within `span` in which anybody is there, joined.
std::vector<Interval> anybodys_hours(const Job& job, Interval span);

/// Says of each piece of work, set-up and clean-up who does it: whoever did the batch's last step,
/// if free, else the first who is. Nothing is said where there is one person only. Of pieces that
/// happen at once there must be no more than people, and each within one presence.
void assign_people(const Job& job, const OperationList& list, Schedule& schedule);

}  // namespace tackfree
