// Dated work: the operations with what the log says of them, dated within every recoat window.
#pragma once

#include "tackfree/air/drying.hpp"
#include "tackfree/plan/plan.hpp"

#include <cstddef>
#include <vector>

namespace tackfree {

/// Lists the operations and marks what the log says of them.
void list_work(Plan& plan);

/// Dates the operations; where a coat misses the window of the one below, once more with sanding
/// before it (rule 2).
void date_work(Plan& plan, const std::vector<DryingClock>& clocks, Interval span);

/// The answer to whether the work can be dated in fewer sessions.
enum class Fewer { found, not_found, proved_none };

/// The same in `most_sessions` or fewer, ready as soon as that allows. Without an answer `plan` has
/// no schedule to use.
Fewer date_work_in_sessions(Plan& plan, const std::vector<DryingClock>& clocks, Interval span,
                            std::size_t most_sessions);

}  // namespace tackfree
