// Moves: which steps stand elsewhere than in the last plan.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <vector>

namespace tackfree {

/// Steps that begin at another time than in the last plan, were done, came in, or went, in order
/// of the times they have now; what went comes last. What was done within a step of the grid of its
/// time was done as planned. Empty without a last plan.
std::vector<Move> moves(const DatedWork& work);

/// Notes in the operations where the last plan has them begin; what was done or past then is left.
void keep_last_starts(OperationList& list, const LastPlan& last);

}  // namespace tackfree
