// Shopping list: tins, thinner, cleaner, abrasives and the small things, for this schedule.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/shopping/sundries.hpp"
#include "tackfree/shopping/tins.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <vector>

namespace tackfree {

/// One coating: what it takes and what to buy.
struct CoatingPurchase {
  std::size_t coating = 0;  ///< index into Job::coatings
  Volume on_surfaces;       ///< expected, without what the tools keep
  Volume kept_by_tools;     ///< over all its sessions
  int sessions = 0;
  Volume expected;     ///< on_surfaces + kept_by_tools
  Volume nine_in_ten;  ///< suffices in nine jobs of ten
  Volume on_shelf;
  std::vector<TinSize> sizes;  ///< Coating::tins, or the usual sizes where the coating names none
  bool usual_sizes = false;    ///< `sizes` are the trade's: common practice, without prices
  TinChoice tins;              ///< to buy; counts by index into `sizes`
  Volume left_over;            ///< expected to be left: on_shelf + bought - expected
};

struct ShoppingList {
  std::vector<CoatingPurchase> coatings;
  std::vector<Sundry> sundries;
};

/// The tin sizes that shops usually have: half pint to gallon, or 0.25 to 5 L.
/// Source: common practice, no source.
std::vector<TinSize> usual_tin_sizes(UnitSystem units);

/// `tape` is masking for the whole job. A coat that found no time counts as a session of its own.
ShoppingList shopping_list(const Job& job, const JobVolumes& volumes, const OperationList& list,
                           const Schedule& schedule, Length tape);

}  // namespace tackfree
