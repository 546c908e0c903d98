#include "tackfree/shopping/left_over.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace tackfree {
namespace {

constexpr Volume drop = millilitres(0.5);

/// What is taken from the tins on one day; the last of all are coats without a day.
struct Draught {
  std::optional<Date> on;
  Volume volume;
};

class Draughts {
 public:
  Draughts(const Job& job, const OperationList& list, const Schedule& schedule, std::size_t coating)
      : job_(job), list_(list), schedule_(schedule), coating_(coating) {}

  std::vector<Draught> in_order() {
    for (const DatedStep& dated : schedule_.steps) {
      const Operation& step = list_.operations.at(dated.operation);
      if (step.coating == coating_ && !step.done) add(day(dated), step.liquid);
    }
    for (const Session& session : schedule_.sessions)
      if (session.coating == coating_)
        add(day(schedule_.steps.at(session.steps.front())), kept_by(session.method));
    for (const ToolRest& rest : schedule_.tool_rests) {
      const DatedStep& dated = schedule_.steps.at(rest.dated_step);
      const Operation& step = list_.operations.at(dated.operation);
      if (step.coating == coating_ && step.method && !rest.wrapped)
        add(day(dated), kept_by(*step.method));
    }
    std::ranges::stable_sort(draughts_, {}, &Draught::on);
    for (const Unplaced& unplaced : schedule_.unplaced) {
      const Operation& step = list_.operations.at(unplaced.operation);
      if (step.coating != coating_) continue;
      add(std::nullopt, step.liquid);
      if (step.method) add(std::nullopt, kept_by(*step.method));
    }
    return std::move(draughts_);
  }

 private:
  void add(std::optional<Date> on, Volume volume) { draughts_.push_back({on, volume}); }
  Date day(const DatedStep& dated) const { return job_.calendar.zone.local(dated.begin()).on; }
  Volume kept_by(std::size_t method) const {
    return job_.data.methods.at(method).kept_by_tool.value;
  }

  const Job& job_;
  const OperationList& list_;
  const Schedule& schedule_;
  std::size_t coating_;
  std::vector<Draught> draughts_;
};

bool is_too_old(const ShelfTin& tin, const std::vector<ShelfTin>& too_old) {
  return std::ranges::any_of(too_old, [&](const ShelfTin& old) {
    return std::tie(old.volume, old.opened_on) == std::tie(tin.volume, tin.opened_on);
  });
}

/// Those that count, in the order in which they are used up.
std::vector<TinLeft> tins_to_use(const std::vector<ShelfTin>& on_shelf,
                                 const CoatingPurchase& purchase) {
  std::vector<TinLeft> tins;
  for (const ShelfTin& tin : on_shelf)
    if (!is_too_old(tin, purchase.too_old)) tins.push_back({tin.volume, tin.opened_on, {}, false});
  std::ranges::stable_sort(
      tins, {}, [](const TinLeft& tin) { return std::pair(!tin.opened_on, tin.opened_on); });
  std::vector<Volume> bought;
  for (std::size_t i = 0; i < purchase.tins.counts.size(); ++i)
    bought.insert(bought.end(), static_cast<std::size_t>(purchase.tins.counts[i]),
                  purchase.sizes.at(i).volume);
  std::ranges::stable_sort(bought, std::ranges::greater());
  for (const Volume volume : bought) tins.push_back({.left = volume, .full = true});
  return tins;
}

void use_up(std::vector<TinLeft>& tins, const std::vector<Draught>& draughts) {
  auto tin = tins.begin();
  for (Draught draught : draughts)
    while (draught.volume > Volume() && tin != tins.end()) {
      const Volume part = std::min(tin->left, draught.volume);
      tin->left -= part;
      draught.volume -= part;
      if (!tin->opened_on && part > Volume()) tin->opened_on = draught.on;
      if (part > Volume()) tin->full = false;
      if (draught.volume > Volume()) ++tin;
    }
}

CoatingLeft coating_left(const Job& job, const std::vector<ShelfTin>& on_shelf,
                         const CoatingPurchase& purchase, const std::vector<Draught>& draughts) {
  const Coating& coating = job.coatings.at(purchase.coating);
  CoatingLeft left{.coating = purchase.coating, .tins = tins_to_use(on_shelf, purchase)};
  use_up(left.tins, draughts);
  std::erase_if(left.tins, [](const TinLeft& tin) { return tin.left < drop; });
  for (const TinLeft& tin : left.tins) left.expected += tin.left;
  left.nine_in_ten =
      std::max(Volume(), purchase.on_shelf + purchase.tins.bought - purchase.nine_in_ten);
  for (const ShelfTin& tin : purchase.too_old)
    left.tins.push_back({tin.volume, tin.opened_on, {}, true});
  for (TinLeft& tin : left.tins) tin.keeps_until = keeps_until(coating, tin.opened_on);
  return left;
}

std::vector<WasteToShed> waste_of(const Job& job, const ShoppingList& shopping) {
  std::vector<WasteToShed> all;
  for (const CoatingPurchase& purchase : shopping.coatings)
    for (const std::string& key : job.coatings.at(purchase.coating).words.disposal) {
      const auto text = std::ranges::find(job.data.texts.disposal, key, &Disposal::key);
      if (text == job.data.texts.disposal.end()) continue;
      auto known = std::ranges::find(all, key, [](const WasteToShed& w) { return w.text.key; });
      if (known == all.end()) known = all.insert(all.end(), {*text, {}});
      known->coatings.push_back(purchase.coating);
    }
  return all;
}

}  // namespace

std::optional<Date> keeps_until(const Coating& coating, const std::optional<Date>& opened_on) {
  if (!opened_on) return std::nullopt;
  return add_days(*opened_on, static_cast<int>(std::floor(coating.tin_keeps.value.in(days))));
}

LeftOver left_over(const Job& job, const std::vector<std::vector<ShelfTin>>& on_shelf,
                   const OperationList& list, const Schedule& schedule,
                   const ShoppingList& shopping) {
  LeftOver left;
  for (const CoatingPurchase& purchase : shopping.coatings)
    left.coatings.push_back(
        coating_left(job, on_shelf.at(purchase.coating), purchase,
                     Draughts(job, list, schedule, purchase.coating).in_order()));
  for (const ThinnerPurchase& purchase : shopping.thinners)
    left.thinners.push_back(
        {purchase.liquid, std::max(Volume(), purchase.left_over), purchase.to_clean});
  left.waste = waste_of(job, shopping);
  return left;
}

}  // namespace tackfree
