// Stock: what is still in the tins, by the job, the log and the coats that are on.
#pragma once

#include "tackfree/operations/operation_list.hpp"
#include "tackfree/shopping/shopping_list.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// A tin with what the done work took of it.
struct UsedTin {
  ShelfTin left;  ///< its volume is what still is in it, down to nothing
  Volume taken;
  int number = 0;  ///< among the job's own tins of the product, from 1; 0 of a shared one
};

struct UsedThinner {
  std::string name;
  std::vector<UsedTin> tins;
};

/// The tins of each of Job::coatings: those that the job has on its shelf, or finds on the shared
/// one, and those that the log has bought or opened since, less what the done coats took, what was
/// thrown away, and what the tools kept, once for each local day and method. A coat without an
/// amount took what was expected. What is taken comes out of tins that the shared shelf has as used
/// by this job, then out of opened ones, and out of those past their time on the day of the first
/// coat at last. A tin that is opened is one of the shelf of that size which is not open yet, else
/// one more; one that is drawn on without being opened was opened for the first coat.
std::vector<std::vector<UsedTin>> used_tins(const Job& job, const OperationList& list);

/// Those of them that are not empty.
std::vector<std::vector<ShelfTin>> tins_left(const Job& job, const OperationList& list);

/// The same of each thinner and cleaner of the job's coatings, whose age does not count.
std::vector<UsedThinner> used_thinners(const Job& job, const OperationList& list);

/// The job's thinners and cleaners, those that it does not name too, with what is left of them by
/// the job, the log and the coats that are on; tools are cleaned once for each local day and
/// method.
std::vector<Thinner> thinners_left(const Job& job, const OperationList& list);

/// All tins that the list says to buy: coatings, then thinners.
std::vector<BoughtTins> tins_to_buy(const Job& job, const ShoppingList& shopping);

/// What is taken over what there was: the log knows of too few tins. By coating.
std::vector<Volume> tins_short(const Job& job, const OperationList& list);

/// The volumes of the coats to come alone, for shopping.
JobVolumes volumes_to_come(const JobVolumes& volumes, const OperationList& list);

}  // namespace tackfree
