// Shopping list: tins, thinner, cleaner, abrasives and the small things, for this schedule.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/shopping/tins.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <optional>
#include <string>
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
  TinChoice tins;    ///< to buy; counts by index into Coating::tins
  Volume left_over;  ///< expected to be left: on_shelf + bought - expected
};

/// Something else to have at hand.
struct Sundry {
  std::string what;  ///< `mineral spirits, to thin and to clean`
  double amount = 0;
  enum class Unit { litres, sheets, pieces, metres } unit = Unit::pieces;
  std::string why;  ///< `2 sheets of P120 for 4.1 m2`
  Origin origin = Origin::practice;
};

struct ShoppingList {
  std::vector<CoatingPurchase> coatings;
  std::vector<Sundry> sundries;
};

/// `tape` is masking for the whole job.
ShoppingList shopping_list(const Job& job, const JobVolumes& volumes, const OperationList& list,
                           const Schedule& schedule, Length tape);

}  // namespace tackfree
