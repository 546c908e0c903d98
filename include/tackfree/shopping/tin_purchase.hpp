// Tin purchase: one product's tins at hand, those too old to count on, and those to buy.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/shopping/tins.hpp"

#include <vector>

namespace tackfree {

/// One product: what is needed, what is at hand, what to buy and what is left over.
struct TinPurchase {
  Volume expected;
  Volume nine_in_ten;             ///< suffices in nine jobs of ten: what the tins must hold
  Volume on_shelf;                ///< without what is too old
  std::vector<ShelfTin> too_old;  ///< at hand, but opened too long ago to count on
  std::vector<TinSize> sizes;     ///< the person's own, or the usual sizes where none are named
  bool usual_sizes = false;       ///< `sizes` are the trade's, without prices
  TinChoice tins;                 ///< to buy; counts by index into `sizes`
  Volume left_over;               ///< expected to be left: on_shelf + bought - expected
};

/// Sets aside the tins that on `first_use` have been open for longer than `opened_keeps`. A tin
/// without a day of opening counts.
std::vector<ShelfTin> too_old_on(Date first_use, Duration opened_keeps,
                                 const std::vector<ShelfTin>& tins);

/// Completes `purchase`, of which `expected`, `nine_in_ten`, `on_shelf` and `too_old` are known.
/// Where `own` names no sizes, `usual` ones are bought.
void choose_purchase(TinPurchase& purchase, const std::vector<TinSize>& own,
                     const Sourced<std::vector<TinSize>>& usual);

}  // namespace tackfree
