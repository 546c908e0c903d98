// Dated work: the operations with what the log says of them, dated within every recoat window.
#pragma once

#include "tackfree/air/drying.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace tackfree {

/// What all searches of one run may do together: two seconds or so of a slow machine.
inline constexpr std::int64_t most_effort = 16'000'000;
/// What the plans after the first one of a run may do together at the least, whatever that left.
inline constexpr std::int64_t least_effort = most_effort / 8;

/// What is left of a run's effort for the plans after its first one.
solver::Effort effort_after(const solver::Effort& first);

/// Lists the operations and marks what the log says of them.
void list_work(Plan& plan);

/// Dates the operations; where a coat misses the window of the one below, once more with sanding
/// before it (rule 2). What the searches do is taken off `effort`.
void date_work(Plan& plan, const std::vector<DryingClock>& clocks, Interval span,
               solver::Effort* effort = nullptr);

/// The answer to whether the work can be dated in fewer sessions.
enum class Fewer { found, not_found, proved_none };

/// The same in `most_sessions` or fewer, ready as soon as that allows. Without an answer `plan` has
/// no schedule to use.
Fewer date_work_in_sessions(Plan& plan, const std::vector<DryingClock>& clocks, Interval span,
                            std::size_t most_sessions, solver::Effort* effort = nullptr);

}  // namespace tackfree
