// Unplaced: why a step found no time, in one sentence with a way out.
#pragma once

#include "tackfree/schedule/schedule.hpp"

namespace tackfree {

/// The step `operation` that `binding` kept out of the whole plan.
Unplaced unplaced(const Job& job, const OperationList& list, std::size_t operation,
                  const Held& binding);

}  // namespace tackfree
