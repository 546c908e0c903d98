#include "tackfree/shopping/shopping_list.hpp"

#include "tackfree/shopping/tool_use.hpp"

#include <algorithm>

namespace tackfree {
namespace {

Date first_use(const Job& job, const OperationList& list, const Schedule& schedule,
               std::size_t coating) {
  const auto step = std::ranges::find_if(schedule.steps, [&](const DatedStep& dated) {
    return list.operations.at(dated.operation).coating == coating;
  });
  const Instant at = step == schedule.steps.end() ? schedule.span.begin : step->begin();
  return job.calendar.zone.local(at).on;
}

CoatingPurchase purchase(const Job& job, const std::vector<ShelfTin>& on_shelf,
                         const CoatingNeed& need, const std::vector<ToolUse>& uses,
                         Date first_use) {
  const Coating& coating = job.coatings.at(need.coating);
  CoatingPurchase result;
  result.coating = need.coating;
  result.sessions = sessions_with(uses, need.coating);
  result.cleanings = cleanings_with(uses, need.coating);
  result.on_surfaces = need.expected;
  for (const ToolUse& use : uses)
    if (use.coating == need.coating)
      result.kept_by_tools +=
          (use.sessions + use.cleanings) * job.data.methods.at(use.method).kept_by_tool.value;
  result.expected = result.on_surfaces + result.kept_by_tools;
  result.nine_in_ten = result.on_surfaces * need.nine_in_ten + result.kept_by_tools;
  result.too_old = too_old_on(first_use, coating.tin_keeps.value, on_shelf);
  for (const ShelfTin& tin : on_shelf) result.on_shelf += tin.volume;
  for (const ShelfTin& tin : result.too_old) result.on_shelf -= tin.volume;
  const ShopFigures& shop = job.data.shop;
  choose_purchase(result, coating.tins,
                  job.units == UnitSystem::us ? shop.tins_us : shop.tins_metric);
  return result;
}

}  // namespace

ShoppingList shopping_list(const Job& job, const std::vector<std::vector<ShelfTin>>& on_shelf,
                           const std::vector<Thinner>& thinners, const JobVolumes& volumes,
                           const OperationList& list, const Schedule& schedule, Length tape) {
  const std::vector<ToolUse> uses = tool_uses(list, schedule);
  ShoppingList shopping;
  for (const CoatingNeed& need : volumes.coatings)
    shopping.coatings.push_back(purchase(job, on_shelf.at(need.coating), need, uses,
                                         first_use(job, list, schedule, need.coating)));
  shopping.thinners = thinner_purchases(job, thinners, volumes, uses);
  shopping.sundries = sundries(job, volumes, list, uses, tape);
  return shopping;
}

}  // namespace tackfree
