#include "tackfree/shopping/thinners.hpp"

#include <algorithm>

namespace tackfree {
namespace {

/// A coating whose liquid does not burn is thinned and cleaned with water.
bool needs_solvent(const Coating& coating) { return coating.flash_point.has_value(); }

/// The purchase of `liquid`, made when it is asked for first.
ThinnerPurchase& purchase_of(std::vector<ThinnerPurchase>& purchases, const std::string& liquid) {
  const auto known = std::ranges::find(purchases, liquid, &ThinnerPurchase::liquid);
  if (known != purchases.end()) return *known;
  purchases.emplace_back().liquid = liquid;
  return purchases.back();
}

}  // namespace

std::vector<ThinnerPurchase> thinner_purchases(const Job& job, const std::vector<Thinner>& thinners,
                                               const JobVolumes& volumes,
                                               const std::vector<ToolUse>& uses) {
  std::vector<ThinnerPurchase> purchases;
  for (const CoatingNeed& need : volumes.coatings) {
    const Coating& coating = job.coatings.at(need.coating);
    if (!needs_solvent(coating)) continue;
    ThinnerPurchase& thinner = purchase_of(purchases, coating.words.thinner);
    thinner.to_thin += need.thinner;
    thinner.nine_in_ten += need.thinner * need.nine_in_ten;
    const int sessions = sessions_with(uses, need.coating);
    ThinnerPurchase& cleaner = purchase_of(purchases, coating.words.cleaner);
    const int cleanings = cleanings_with(uses, need.coating);
    const Volume to_clean = cleanings * job.data.shop.cleaner_per_session.value;
    cleaner.to_clean += to_clean;
    cleaner.nine_in_ten += to_clean;
    cleaner.sessions += sessions;
    cleaner.cleanings += cleanings;
  }
  std::erase_if(purchases, [](const ThinnerPurchase& p) { return p.nine_in_ten <= Volume{}; });
  for (ThinnerPurchase& purchase : purchases) {
    purchase.expected = purchase.to_thin + purchase.to_clean;
    const Thinner* own = find_named(thinners, purchase.liquid);
    if (own != nullptr)
      for (const ShelfTin& tin : own->on_shelf) purchase.on_shelf += tin.volume;
    choose_purchase(
        purchase, own == nullptr ? std::vector<TinSize>{} : own->tins,
        job.units == UnitSystem::us ? job.data.shop.thinner_us : job.data.shop.thinner_metric);
  }
  return purchases;
}

}  // namespace tackfree
