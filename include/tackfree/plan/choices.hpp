// Choices: when all is ready in how many sessions, from the soonest to the fewest.
#pragma once

#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/make_plan.hpp"

#include <optional>
#include <vector>

namespace tackfree {

struct Choices {
  /// The job's plan, dated in one way after the other: each is ready later than the one before, in
  /// fewer sessions. The first is ready soonest. Its proof is as the schedule's; that of the others
  /// holds among schedules in as few sessions or fewer.
  std::vector<Plan> ways;
  /// Proved: no schedule has fewer sessions than the last one, in the air of its room.
  bool none_fewer = false;
};

/// All choices between an early date and few sessions for a plan that stands but is not dated, as
/// far as the search finds them. Due dates that the first way keeps are kept in all. One way alone
/// where a step finds no time or a coat does not dry in time. What the searches do is taken off
/// `effort`.
Choices choices(Plan standing, Interval span, solver::Effort& effort,
                const StageListener& stage = {});

/// The same for a job as of `now`; nothing, with Problems, as for make_standing.
std::optional<Choices> choices_of(Job job, Instant now, Problems& problems,
                                  const StageListener& stage = {});

}  // namespace tackfree
