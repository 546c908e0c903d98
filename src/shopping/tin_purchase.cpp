#include "tackfree/shopping/tin_purchase.hpp"

namespace tackfree {

std::vector<ShelfTin> too_old_on(Date first_use, Duration opened_keeps,
                                 const std::vector<ShelfTin>& tins) {
  std::vector<ShelfTin> too_old;
  for (const ShelfTin& tin : tins)
    if (tin.opened_on && days(days_between(*tin.opened_on, first_use)) > opened_keeps)
      too_old.push_back(tin);
  return too_old;
}

void choose_purchase(TinPurchase& purchase, const std::vector<TinSize>& own,
                     const Sourced<std::vector<TinSize>>& usual) {
  purchase.usual_sizes = own.empty();
  purchase.sizes = own.empty() ? usual.value : own;
  purchase.tins = choose_tins(purchase.nine_in_ten - purchase.on_shelf, purchase.sizes);
  purchase.left_over = purchase.on_shelf + purchase.tins.bought - purchase.expected;
}

}  // namespace tackfree
