// Attended work: the person's hours in a schedule, by kind of work and by day.
#pragma once

#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <variant>
#include <vector>

namespace tackfree {

/// Work of a session besides its coats.
enum class SessionWork { set_up, clean_up };
using KindOfWork = std::variant<OperationKind, SessionWork>;

/// The hours of one kind of work.
struct WorkOfKind {
  KindOfWork kind;
  Minutes work{0};
};

/// The hours of the one person on one local day.
struct WorkOfDay {
  Date on;
  Minutes work{0};
};

struct AttendedWork {
  Minutes in_all{0};
  std::vector<WorkOfKind> kinds;  ///< in the order of first use; set-up and clean-up last
  std::vector<WorkOfDay> days;    ///< days with work, in order
  Duration without_time;          ///< of steps that found no time, not in the sums
};

/// Sums of the work to come: the schedule's own pieces and sessions, so rounded to its grid as they
/// are; work past midnight counts on both days.
AttendedWork attended_work(const OperationList& list, const Schedule& schedule, const Zone& zone);

}  // namespace tackfree
