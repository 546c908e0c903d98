#include "tackfree/shopping/thinners.hpp"

#include <algorithm>
#include <numeric>

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

std::vector<TinSize> usual_thinner_sizes(UnitSystem units) {
  if (units == UnitSystem::us)
    return {{.label = "1 pt", .volume = us_pints(1), .price = {}},
            {.label = "1 qt", .volume = us_quarts(1), .price = {}},
            {.label = "1 gal", .volume = us_gallons(1), .price = {}}};
  return {{.label = "0.5 L", .volume = litres(0.5), .price = {}},
          {.label = "1 L", .volume = litres(1), .price = {}},
          {.label = "5 L", .volume = litres(5), .price = {}}};
}

std::vector<ThinnerPurchase> thinner_purchases(const Job& job, const JobVolumes& volumes,
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
    cleaner.to_clean += sessions * cleaner_per_session;
    cleaner.nine_in_ten += sessions * cleaner_per_session;
    cleaner.sessions += sessions;
  }
  std::erase_if(purchases, [](const ThinnerPurchase& p) { return p.nine_in_ten <= Volume{}; });
  for (ThinnerPurchase& purchase : purchases) {
    purchase.expected = purchase.to_thin + purchase.to_clean;
    const Thinner* own = find_named(job.thinners, purchase.liquid);
    if (own != nullptr)
      purchase.on_shelf = std::accumulate(own->on_shelf.begin(), own->on_shelf.end(), Volume{});
    choose_purchase(purchase, own == nullptr ? std::vector<TinSize>{} : own->tins,
                    usual_thinner_sizes(job.units));
  }
  return purchases;
}

}  // namespace tackfree
