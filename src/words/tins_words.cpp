#include "tackfree/words/tins_words.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/step_words.hpp"

#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

std::string tins_text(const TinPurchase& purchase) {
  std::vector<std::string> tins;
  for (std::size_t i = 0; i < purchase.tins.counts.size(); ++i)
    if (purchase.tins.counts[i] > 0)
      tins.push_back(fmt::format("{} x {}", purchase.tins.counts[i], purchase.sizes.at(i).label));
  return tins.empty() ? "nothing" : fmt::format("{}", fmt::join(tins, " + "));
}

std::string all_tins_text(const Plan& plan) {
  std::vector<std::string> all;
  const auto add = [&](const TinPurchase& purchase, const std::string& name) {
    if (purchase.tins.bought > Volume())
      all.push_back(fmt::format("{} {}", tins_text(purchase), cut_to(longest_name, name)));
  };
  for (const CoatingPurchase& purchase : plan.shopping.coatings)
    add(purchase, plan.job.coatings.at(purchase.coating).name);
  for (const ThinnerPurchase& purchase : plan.shopping.thinners) add(purchase, purchase.liquid);
  return all.empty() ? "nothing" : fmt::format("{}", fmt::join(all, "; "));
}

}  // namespace tackfree
