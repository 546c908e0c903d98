#include "tackfree/plan/stock.hpp"

#include "tackfree/plan/log_facts.hpp"

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
