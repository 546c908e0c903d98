#include "tackfree/plan/stock.hpp"

#include "tackfree/logged/log_facts.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <tuple>
#include <utility>

namespace tackfree {

namespace {

constexpr Volume trifle = millilitres(0.5);

Date local_day(const Job& job, Instant at) { return job.calendar.zone.local(at).on; }

bool is_of_size(const ShelfTin& tin, Volume size) {
  const Volume apart = tin.volume - size;
  return apart < trifle && apart > trifle * -1.0;
}

/// A coating, or what coatings are thinned or tools cleaned with.
struct Product {
  std::string name, class_key;
  std::optional<Duration> keeps = {};  ///< an opened tin; of a thinner nothing
  bool is_thinner() const { return class_key.empty(); }
};

/// `tins` of a product and those that the log has bought, or opened though they were not there.
/// What other jobs took of the tins that this one left on the shared shelf is gone.
std::vector<ShelfTin> tins_had(const Job& job, const Product& product, std::vector<ShelfTin> tins) {
  for (const LogEntry& entry : job.history.entries) {
    for (const BoughtTins& bought : entry.bought)
      if (bought.thinner == product.is_thinner() && bought.product == product.name)
        tins.insert(tins.end(), static_cast<std::size_t>(bought.count),
                    {bought.each, std::nullopt});
    const std::string& named = product.is_thinner() ? entry.thinner : entry.coating;
    if (!entry.tin || named != product.name || !entry.amount) continue;
    if (*entry.tin == TinEvent::bought) {
      tins.push_back({*entry.amount, std::nullopt});
      continue;
    }
    const auto found = std::ranges::find_if(tins, [&](const ShelfTin& tin) {
      return !tin.opened_on && is_of_size(tin, *entry.amount);
    });
    ShelfTin& opened = found == tins.end() ? tins.emplace_back() : *found;
    opened = {*entry.amount, local_day(job, entry.at), opened.shared};
  }
  if (!job.shelf) return tins;
  for (const SharedTin& left : job.shelf->tins) {
    if (left.left_by != job.id || !is_of(left, product.name, product.class_key)) continue;
    int number = 0;
    for (ShelfTin& tin : tins)
      if (!tin.shared && ++number == left.number) {
        tin.volume = std::max(Volume(), tin.volume - taken_by_others(left, job.id));
        if (!tin.opened_on) tin.opened_on = opened_by_others(left, job.id);
      }
  }
  return tins;
}

std::vector<ShelfTin> at_hand(const Job& job, const Product& product, std::vector<ShelfTin> own) {
  if (!job.shelf) return own;
  for (const ShelfTin& tin : tins_for(*job.shelf, job.id, product.name, product.class_key))
    own.push_back(tin);
  return own;
}

/// What a job has written on the shared shelf of a tin: that it took of it, or opened its own.
bool is_known_used(const Job& job, const Product& product, const UsedTin& used) {
  if (!job.shelf) return false;
  if (used.left.shared)
    return std::ranges::count(job.shelf->tins.at(*used.left.shared).takings, job.id,
                              &TinTaking::job) > 0;
  return std::ranges::any_of(job.shelf->tins, [&](const SharedTin& tin) {
    return tin.left_by == job.id && tin.number == used.number && tin.opened_on &&
           is_of(tin, product.name, product.class_key);
  });
}

/// The tins that are used up first: those that were used as the job last wrote the shelf, so that a
/// tin that is put there later is not thought used; then opened ones, the others, and at last those
/// past their time.
int place_in_use(const Job& job, const Product& product, const UsedTin& used,
                 std::optional<Date> first_used) {
  if (used.left.opened_on && first_used && product.keeps &&
      days(days_between(*used.left.opened_on, *first_used)) > *product.keeps)
    return 3;
  if (is_known_used(job, product, used)) return 0;
  return used.left.opened_on ? 1 : 2;
}

/// The tins of a product with what was taken of each.
std::vector<UsedTin> used(const Job& job, const Product& product, std::vector<ShelfTin> own,
                          Volume to_take, std::optional<Date> first_used) {
  std::vector<UsedTin> all;
  int number = 0;
  for (const ShelfTin& tin : tins_had(job, product, at_hand(job, product, std::move(own))))
    all.push_back({tin, Volume(), tin.shared ? 0 : ++number});
  if (to_take > Volume())
    std::ranges::stable_sort(
        all, {}, [&](const UsedTin& tin) { return place_in_use(job, product, tin, first_used); });
  for (UsedTin& tin : all) {
    tin.taken = std::min(tin.left.volume, to_take);
    tin.left.volume -= tin.taken;
    to_take -= tin.taken;
    if (tin.taken >= trifle && !tin.left.opened_on) tin.left.opened_on = first_used;
  }
  return all;
}

/// What still is in them.
std::vector<ShelfTin> still_in(const std::vector<UsedTin>& used) {
  std::vector<ShelfTin> tins;
  for (const UsedTin& tin : used)
    if (tin.left.volume >= trifle) tins.push_back(tin.left);
  return tins;
}

/// The day of the first coat that is on, by coating.
std::vector<std::optional<Date>> first_coats(const Job& job, const OperationList& list) {
  std::vector<std::optional<Date>> days(job.coatings.size());
  for (const Operation& op : list.operations) {
    if (!op.coating || !op.done || op.skipped()) continue;
    const Date on = local_day(job, op.done->time.end);
    std::optional<Date>& first = days.at(*op.coating);
    if (!first || on < *first) first = on;
  }
  return days;
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

}  // namespace

std::vector<std::vector<UsedTin>> used_tins(const Job& job, const OperationList& list) {
  const std::vector<Volume> to_take = taken(job, list);
  const auto first_used = first_coats(job, list);
  std::vector<std::vector<UsedTin>> all;
  for (std::size_t c = 0; c < job.coatings.size(); ++c) {
    const Coating& coating = job.coatings[c];
    all.push_back(used(job, {coating.name, coating.class_key, coating.tin_keeps.value},
                       coating.on_shelf, to_take[c], first_used[c]));
  }
  return all;
}

std::vector<std::vector<ShelfTin>> tins_left(const Job& job, const OperationList& list) {
  std::vector<std::vector<ShelfTin>> all;
  for (const auto& tins : used_tins(job, list)) all.push_back(still_in(tins));
  return all;
}

std::vector<UsedThinner> used_thinners(const Job& job, const OperationList& list) {
  std::vector<UsedThinner> all;
  for (const std::string& name : liquids_of(job.coatings)) {
    const Thinner* own = find_named(job.thinners, name);
    all.push_back(
        {name, used(job, {name, {}}, own == nullptr ? std::vector<ShelfTin>{} : own->on_shelf,
                    taken_of_thinner(job, list, name), std::nullopt)});
  }
  return all;
}

std::vector<Thinner> thinners_left(const Job& job, const OperationList& list) {
  std::vector<Thinner> all = job.thinners;
  for (const UsedThinner& used : used_thinners(job, list)) {
    if (find_named(all, used.name) == nullptr) all.emplace_back().name = used.name;
    const auto thinner = std::ranges::find(all, used.name, &Thinner::name);
    thinner->on_shelf = still_in(used.tins);
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
  const auto used = used_tins(job, list);
  for (std::size_t c = 0; c < job.coatings.size(); ++c) {
    for (const UsedTin& tin : used[c]) missing[c] -= tin.taken;
    missing[c] = std::max(Volume(), missing[c]);
  }
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
