#include "tackfree/shopping/shopping_list.hpp"

#include "tackfree/shopping/tool_use.hpp"

#include <numeric>

namespace tackfree {
namespace {

CoatingPurchase purchase(const Job& job, const CoatingNeed& need,
                         const std::vector<ToolUse>& uses) {
  const Coating& coating = job.coatings.at(need.coating);
  CoatingPurchase result;
  result.coating = need.coating;
  result.on_surfaces = need.expected;
  for (const ToolUse& use : uses) {
    if (use.coating != need.coating) continue;
    result.sessions += use.sessions;
    result.kept_by_tools += use.sessions * job.data.methods.at(use.method).kept_by_tool.value;
  }
  result.expected = result.on_surfaces + result.kept_by_tools;
  result.nine_in_ten = result.on_surfaces * need.nine_in_ten + result.kept_by_tools;
  result.on_shelf = std::accumulate(coating.on_shelf.begin(), coating.on_shelf.end(), Volume{});
  result.usual_sizes = coating.tins.empty();
  result.sizes = result.usual_sizes ? usual_tin_sizes(job.units) : coating.tins;
  result.tins = choose_tins(result.nine_in_ten - result.on_shelf, result.sizes);
  result.left_over = result.on_shelf + result.tins.bought - result.expected;
  return result;
}

}  // namespace

std::vector<TinSize> usual_tin_sizes(UnitSystem units) {
  if (units == UnitSystem::us)
    return {{.label = "1/2 pt", .volume = us_pints(0.5), .price = {}},
            {.label = "1 pt", .volume = us_pints(1), .price = {}},
            {.label = "1 qt", .volume = us_quarts(1), .price = {}},
            {.label = "1 gal", .volume = us_gallons(1), .price = {}}};
  return {{.label = "0.25 L", .volume = litres(0.25), .price = {}},
          {.label = "0.375 L", .volume = litres(0.375), .price = {}},
          {.label = "0.75 L", .volume = litres(0.75), .price = {}},
          {.label = "1 L", .volume = litres(1), .price = {}},
          {.label = "2.5 L", .volume = litres(2.5), .price = {}},
          {.label = "5 L", .volume = litres(5), .price = {}}};
}

ShoppingList shopping_list(const Job& job, const JobVolumes& volumes, const OperationList& list,
                           const Schedule& schedule, Length tape) {
  const std::vector<ToolUse> uses = tool_uses(list, schedule);
  ShoppingList shopping;
  for (const CoatingNeed& need : volumes.coatings)
    shopping.coatings.push_back(purchase(job, need, uses));
  shopping.sundries = sundries(job, volumes, list, uses, tape);
  return shopping;
}

}  // namespace tackfree
