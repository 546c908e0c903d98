// Finishing touch: what a system asks to have done to a batch when its last coat has cured.
#pragma once

#include "tackfree/operations/operation.hpp"

namespace tackfree {

/// Adds the touch of the batch's system to `list`, in which its coats and outcomes stand already:
/// on the side that shows, once the last coats are at the stage that the touch waits for. Adds
/// nothing where the system has none or the batch no coats.
void add_finishing_touch(const Job& job, std::size_t batch, OperationList& list);

}  // namespace tackfree
