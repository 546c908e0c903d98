// Unlogged: work that was to be done by now and that the log does not have, with both answers.
#pragma once

#include "tackfree/evening/log_entry.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace tackfree {

/// One piece of work that nobody has logged: a step, or the grits of one sanding.
struct UnloggedWork {
  std::vector<std::size_t> operations;  ///< indices into OperationList::operations, in order
  Interval planned;                     ///< when it was to be done
  Report report;                        ///< what logs it as it was planned
  std::optional<Plan> if_done;          ///< the plan with that in the log; of what is asked
  std::optional<Instant> if_not;        ///< when the plan without it has it begin
};

struct Unlogged {
  std::vector<UnloggedWork> asked;  ///< at most two, the latest first
  std::vector<UnloggedWork> older;  ///< the rest
};

/// What of the work in `planned`, the plans known before with the newest first, should be over by
/// `now`, and is neither logged, left out, nor taken as done because later work is; nor planned for
/// hours when by the log nobody was there. Work that waits for a coat that is itself unlogged is
/// not asked about: it comes up when that one is answered.
/// `plan` is the plan as of `now`, `job` what it was made from. Makes a plan for each question;
/// what the searches for them do is taken off `effort`.
Unlogged unlogged(const Plan& plan, const Job& job, const std::vector<LastPlan>& planned,
                  Instant now, solver::Effort& effort);

}  // namespace tackfree
