#include "tackfree/plan/shelf_update.hpp"

#include "tackfree/plan/stock.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace tackfree {

namespace {

/// Less cannot be written.
constexpr Volume least_written = millilitres(1);

class ShelfUpdate {
 public:
  ShelfUpdate(Shelf shelf, const Job& job) : shelf_(std::move(shelf)), job_(job) {
    for (SharedTin& tin : shelf_.tins)
      std::erase_if(tin.takings, [&](const TinTaking& taking) { return taking.job == job_.id; });
  }

  void put(const std::string& product, const std::string& class_key,
           const std::vector<UsedTin>& tins) {
    for (const UsedTin& tin : tins)
      if (tin.left.shared)
        take(shelf_.tins.at(*tin.left.shared), tin);
      else
        leave(product, class_key, tin);
  }

  /// Without tins that this job left and that are empty now, unless others took of them.
  Shelf result() {
    std::erase_if(shelf_.tins, [&](const SharedTin& tin) {
      return tin.left_by == job_.id && tin.volume.volume < least_written;
    });
    return std::move(shelf_);
  }

  /// Before the tins are put back: none of them is left.
  void clear_own() {
    for (SharedTin& tin : shelf_.tins)
      if (tin.left_by == job_.id) tin.volume = {taken_by_others(tin, job_.id), {}};
  }

 private:
  void take(SharedTin& tin, const UsedTin& used) {
    const std::optional<Date> opened_on =
        opened_before(tin, job_.id) ? std::nullopt : used.left.opened_on;
    if (used.taken >= least_written || opened_on)
      tin.takings.push_back({job_.id, {used.taken, {}}, opened_on});
  }

  void leave(const std::string& product, const std::string& class_key, const UsedTin& used) {
    const auto known = std::ranges::find_if(shelf_.tins, [&](const SharedTin& tin) {
      return tin.left_by == job_.id && tin.number == used.number && is_of(tin, product, class_key);
    });
    if (known == shelf_.tins.end() && used.left.volume < least_written) return;
    SharedTin& tin = known == shelf_.tins.end() ? shelf_.tins.emplace_back() : *known;
    tin.product = product;
    tin.class_key = class_key;
    tin.volume.volume += used.left.volume;
    // What others say of it stays theirs.
    tin.opened_on =
        used.left.opened_on == opened_by_others(tin, job_.id) ? std::nullopt : used.left.opened_on;
    tin.left_by = job_.id;
    tin.number = used.number;
  }

  Shelf shelf_;
  const Job& job_;
};

}  // namespace

Shelf shelf_after(Shelf shelf, Job job, const OperationList& list) {
  job.shelf = shelf;
  ShelfUpdate update(std::move(shelf), job);
  update.clear_own();
  const auto coatings = used_tins(job, list);
  for (std::size_t c = 0; c < coatings.size(); ++c)
    update.put(job.coatings[c].name, job.coatings[c].class_key, coatings[c]);
  for (const UsedThinner& thinner : used_thinners(job, list))
    update.put(thinner.name, {}, thinner.tins);
  return update.result();
}

}  // namespace tackfree
