// Shopping list: tins, thinner, cleaner, abrasives and the small things, for this schedule.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/shopping/sundries.hpp"
#include "tackfree/shopping/thinners.hpp"
#include "tackfree/shopping/tin_purchase.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <vector>

namespace tackfree {

/// One coating, for all systems and steps that it serves in.
struct CoatingPurchase : TinPurchase {
  std::size_t coating = 0;  ///< index into Job::coatings
  Volume on_surfaces;       ///< expected, without what the tools keep
  Volume kept_by_tools;     ///< over all its sessions
  int sessions = 0;
  int cleanings = 0;  ///< of its tools: after each session, and in pauses
};

struct ShoppingList {
  std::vector<CoatingPurchase> coatings;
  std::vector<ThinnerPurchase> thinners;
  std::vector<Sundry> sundries;
};

/// Tins are judged by their age on the day when the schedule first uses the coating; where it has
/// no time for it, on the first day of the plan. `tape` is masking for the whole job. A coat that
/// found no time counts as a session of its own.
ShoppingList shopping_list(const Job& job, const std::vector<std::vector<ShelfTin>>& on_shelf,
                           const std::vector<Thinner>& thinners, const JobVolumes& volumes,
                           const OperationList& list, const Schedule& schedule, Length tape);

}  // namespace tackfree
