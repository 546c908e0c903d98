// Choices: when all is ready in how many sessions, from the soonest to the fewest.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/plan/remedy.hpp"
#include "tackfree/plan/stage_listener.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/schedule/attended_work.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// One way to date the work on a job.
struct Way : DatedWork {
  AttendedWork work;
};

struct Choices {
  /// The work dated in one way after the other: each is ready later than the one before, in
  /// fewer sessions. The first is ready soonest. Its proof is as the schedule's; that of the others
  /// holds among schedules in as few sessions or fewer.
  std::vector<Way> ways;
  /// Proved: no schedule has fewer sessions than the last one, in the air of its room.
  bool none_fewer = false;
  /// Of the first step without time; only choices_of looks for them.
  std::vector<Remedy> remedies;
};

/// All choices between an early date and few sessions, as far as the search finds them. Due dates
/// that the first way keeps are kept in all. One way alone where a step finds no time or a coat
/// does not dry in time. What the searches do is taken off `effort`.
Choices choices(WorkAtHand work, solver::Effort& effort, const StageListener& stage = {});

/// The same for a job as of `now`; nothing, with Problems, as for make_work_at_hand.
std::optional<Choices> choices_of(const Job& job, Instant now, Problems& problems,
                                  const StageListener& stage = {});

}  // namespace tackfree
