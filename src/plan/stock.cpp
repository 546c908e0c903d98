#include "tackfree/plan/stock.hpp"

#include "tackfree/logged/log_facts.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace tackfree {

namespace {

constexpr Volume trifle = millilitres(0.5);

Date local_day(const Job& job, Instant at) { return job.calendar.zone.local(at).on; }

/// The tins as they come to hand, before anything is taken.
std::vector<ShelfTin> tins_had(const Job& job, const Coating& coating) {
  std::vector<ShelfTin> tins = coating.on_shelf;
  for (const LogEntry& entry : job.history.entries) {
    for (const BoughtTins& bought : entry.bought)
      if (!bought.thinner && bought.product == coating.name)
        tins.insert(tins.end(), static_cast<std::size_t>(bought.count),
                    {bought.each, std::nullopt});
    if (!entry.tin || entry.coating != coating.name || !entry.amount) continue;
    if (*entry.tin == TinEvent::bought) {
      tins.push_back({*entry.amount, std::nullopt});
      continue;
    }
    const auto found = std::ranges::find_if(tins, [&](const ShelfTin& tin) {
      const Volume apart = tin.volume - *entry.amount;
      return !tin.opened_on && apart < trifle && apart > trifle * -1.0;
    });
    ShelfTin& opened = found == tins.end() ? tins.emplace_back() : *found;
    opened = {*entry.amount, local_day(job, entry.at)};
  }
  return tins;
}

/// What the log says a coat took of the coating alone; else what was expected.
Volume taken_by(const Job& job, const Operation& op) {
  for (const LogEntry& entry : job.history.entries)
    if (entry.kind == LogKind::coat && entry.step == op.key && entry.amount && op.mixed > Volume())
      return *entry.amount * (op.liquid / op.mixed);
  return op.liquid;
}

std::vector<Volume> taken(const Job& job, const OperationList& list) {
  std::vector<Volume> sums(job.coatings.size());
  std::set<std::tuple<std::size_t, std::size_t, Date>> cleaned;
  for (const Operation& op : list.operations) {
    if (!op.coating || !op.done || op.skipped()) continue;
    sums.at(*op.coating) += taken_by(job, op);
    if (op.method &&
        cleaned.insert({*op.coating, *op.method, local_day(job, op.done->time.end)}).second)
      sums.at(*op.coating) += job.data.methods.at(*op.method).kept_by_tool.value;
  }
  for (const LogEntry& entry : job.history.entries)
    for (std::size_t c = 0; c < job.coatings.size(); ++c)
      if (entry.kind == LogKind::waste && entry.coating == job.coatings[c].name && entry.amount)
        sums[c] += *entry.amount;
  return sums;
}

/// What came to hand of a thinner: the job's, and what was bought, or opened and not there.
std::vector<Volume> had_of_thinner(const Job& job, const Thinner& thinner) {
  std::vector<Volume> tins = thinner.on_shelf;
  std::vector<Volume> unopened = tins;
  for (const LogEntry& entry : job.history.entries) {
    for (const BoughtTins& bought : entry.bought)
      if (bought.thinner && bought.product == thinner.name)
        tins.insert(tins.end(), static_cast<std::size_t>(bought.count), bought.each);
    if (entry.thinner != thinner.name || !entry.tin || !entry.amount) continue;
    const auto same = std::ranges::find_if(unopened, [&](Volume each) {
      const Volume apart = each - *entry.amount;
      return apart < trifle && apart > trifle * -1.0;
    });
    if (*entry.tin == TinEvent::opened && same != unopened.end()) {
      unopened.erase(same);
      continue;
    }
    tins.push_back(*entry.amount);
    if (*entry.tin == TinEvent::bought) unopened.push_back(*entry.amount);
  }
  return tins;
}

/// What the done coats took of it: to thin them, and to clean their tools once a day and method.
Volume taken_of_thinner(const Job& job, const OperationList& list, const std::string& name) {
  Volume sum;
  std::set<std::tuple<std::size_t, std::size_t, Date>> cleaned;
  for (const Operation& op : list.operations) {
    if (!op.coating || !op.done || op.skipped()) continue;
    const Coating& coating = job.coatings.at(*op.coating);
    if (!coating.flash_point) continue;
    if (coating.words.thinner == name && op.liquid > Volume())
      sum += op.thinner * (taken_by(job, op) / op.liquid);
    if (coating.words.cleaner == name && op.method &&
        cleaned.insert({*op.coating, *op.method, local_day(job, op.done->time.end)}).second)
      sum += job.data.shop.cleaner_per_session.value;
  }
  return sum;
}

Volume all_of(const std::vector<ShelfTin>& tins) {
  Volume sum;
  for (const ShelfTin& tin : tins) sum += tin.volume;
  return sum;
}

}  // namespace

std::vector<std::vector<ShelfTin>> tins_left(const Job& job, const OperationList& list) {
  std::vector<Volume> to_take = taken(job, list);
  std::vector<std::vector<ShelfTin>> all;
  for (std::size_t c = 0; c < job.coatings.size(); ++c) {
    std::vector<ShelfTin> tins = tins_had(job, job.coatings[c]);
    if (to_take[c] > Volume())
      std::stable_partition(tins.begin(), tins.end(),
                            [](const ShelfTin& t) { return t.opened_on.has_value(); });
    for (ShelfTin& tin : tins) {
      const Volume part = std::min(tin.volume, to_take[c]);
      tin.volume -= part;
      to_take[c] -= part;
    }
    std::erase_if(tins, [](const ShelfTin& tin) { return tin.volume < trifle; });
    all.push_back(std::move(tins));
  }
  return all;
}

std::vector<Thinner> thinners_left(const Job& job, const OperationList& list) {
  std::vector<Thinner> all = job.thinners;
  for (const std::string& name : liquids_of(job.coatings))
    if (find_named(all, name) == nullptr) all.emplace_back().name = name;
  for (Thinner& thinner : all) {
    thinner.on_shelf = had_of_thinner(job, thinner);
    Volume to_take = taken_of_thinner(job, list, thinner.name);
    for (Volume& tin : thinner.on_shelf) {
      const Volume part = std::min(tin, to_take);
      tin -= part;
      to_take -= part;
    }
    std::erase_if(thinner.on_shelf, [](Volume tin) { return tin < trifle; });
  }
  return all;
}

std::vector<BoughtTins> tins_to_buy(const Job& job, const ShoppingList& shopping) {
  std::vector<BoughtTins> all;
  const auto add = [&](const TinPurchase& purchase, const std::string& product, bool thinner) {
    for (std::size_t i = 0; i < purchase.tins.counts.size(); ++i)
      if (purchase.tins.counts[i] > 0)
        all.push_back({product, purchase.sizes.at(i).label, purchase.sizes.at(i).volume,
                       purchase.tins.counts[i], thinner});
  };
  for (const CoatingPurchase& purchase : shopping.coatings)
    add(purchase, job.coatings.at(purchase.coating).name, false);
  for (const ThinnerPurchase& purchase : shopping.thinners) add(purchase, purchase.liquid, true);
  return all;
}

std::vector<Volume> tins_short(const Job& job, const OperationList& list) {
  std::vector<Volume> missing = taken(job, list);
  for (std::size_t c = 0; c < job.coatings.size(); ++c)
    missing[c] = std::max(Volume(), missing[c] - all_of(tins_had(job, job.coatings[c])));
  return missing;
}

JobVolumes volumes_to_come(const JobVolumes& volumes, const OperationList& list) {
  JobVolumes left = volumes;
  const auto is_done = [](const Operation& op) { return op.done.has_value(); };
  if (std::ranges::none_of(list.operations, is_done)) return left;
  left.coats.clear();
  for (const Operation& op : list.operations)
    if (op.coating && !op.done)
      left.coats.push_back(
          {op.batch, op.step, op.coat, op.side, op.area, op.mixed, op.liquid, op.thinner});
  for (CoatingNeed& need : left.coatings) {
    need.expected = need.thinner = Volume();
    for (const Operation& op : list.operations)
      if (op.coating == need.coating && !op.done) {
        need.expected += op.liquid;
        need.thinner += op.thinner;
      }
  }
  return left;
}

}  // namespace tackfree
