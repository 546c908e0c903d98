// Work sessions: the dated work in stretches without a long pause, of everybody or of one person.
#pragma once

#include "tackfree/schedule/attended_work.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace tackfree {

/// A longer pause ends a session; a lunch does not (assumed).
inline constexpr Minutes longest_pause{60};

/// What one person does in one go: set-up, clean-up, or work on one batch. The grits of one sanding
/// are one task, and a coat is one with the dusting off right before it.
struct WorkTask {
  Interval time;  ///< with short pauses in it
  Minutes work{0};
  KindOfWork kind;                 ///< the coat's, where it is dusted off first
  std::vector<std::size_t> steps;  ///< indices into Schedule::steps, in order; none: tools
  std::size_t first_piece = 0;     ///< of the first step: how many pieces lie before it
  std::optional<std::size_t> who;  ///< index into Job::people, where there are several
  std::optional<std::size_t> coating_session;  ///< index into Schedule::sessions: of the tools

  bool is_of_tools() const { return steps.empty(); }
};

/// One evening, morning or day of work. It begins on one local day and may end on the next.
struct WorkSession {
  Interval time;                    ///< set-up and clean-up with it
  std::vector<WorkTask> tasks;      ///< in order of time
  std::vector<std::size_t> people;  ///< who works in it, in the order of Job::people
};

struct SessionChoice {
  std::optional<std::size_t> who;  ///< this person's work alone
  bool with_done = false;          ///< what the log has, where it was really done
};

/// Set-up, clean-up and the cleaning between two coats, one task each, in no order.
std::vector<WorkTask> tool_tasks(const Schedule& schedule);

/// In order of time. Work of no length is left out, and what was skipped.
std::vector<WorkSession> work_sessions(const OperationList& list, const Schedule& schedule,
                                       const SessionChoice& choice = {});

}  // namespace tackfree
