// Stock: what is still in the tins, by the job, the log and the coats that are on.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <vector>

namespace tackfree {

/// The tins of each of Job::coatings: those that the job has on the shelf, those that the log has
/// bought or opened since, less what the done coats took, what was thrown away, and what the tools
/// kept, once for each local day and method. A coat without an amount took what was expected. What
/// is taken comes out of opened tins first. A tin that is opened is one of the shelf of that size
/// which is not open yet, else one more.
std::vector<std::vector<ShelfTin>> tins_left(const Job& job, const OperationList& list);

/// What is taken over what there was: the log knows of too few tins. By coating.
std::vector<Volume> tins_short(const Job& job, const OperationList& list);

/// The volumes of the coats to come alone, for shopping.
JobVolumes volumes_to_come(const JobVolumes& volumes, const OperationList& list);

}  // namespace tackfree
