// Shelf update: the shared shelf with what one job took from it and left on it.
#pragma once

#include "tackfree/model/shelf.hpp"
#include "tackfree/operations/operation_list.hpp"

namespace tackfree {

/// `shelf` as it stands once `job` has written down what its log says: what it took of each shared
/// tin, and the tins of its own that are left. Only what stands there in this job's name changes,
/// so a second time changes nothing. `job` is counted with `shelf`, whatever it had before.
Shelf shelf_after(Shelf shelf, Job job, const OperationList& list);

}  // namespace tackfree
