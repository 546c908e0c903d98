#include "tackfree/shopping/sundries.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tackfree {
namespace {

using Item = Sundry::Item;

/// Whole pieces; the trifle keeps 2.0000001 sheets from becoming three.
double whole_up(double amount) { return std::ceil(amount - 1e-6); }

class SundryList {
 public:
  SundryList(const Job& job, const JobVolumes& volumes, const OperationList& list,
             const std::vector<ToolUse>& uses)
      : job_(job), volumes_(volumes), list_(list), uses_(uses) {
    for (const ToolUse& use : uses) sessions_ += use.sessions;
  }

  std::vector<Sundry> result(Length tape) {
    applicators();
    wraps();
    abrasives();
    wiping_cloths();
    touches();
    if (tape > Length{}) add({.item = Item::masking_tape, .amount = tape.in(metres)});
    protection();
    small_things();
    return std::move(sundries_);
  }

 private:
  void add(const Sundry& sundry) { sundries_.push_back(sundry); }

  /// Brushes and guns are cleaned and used again; rollers and cloths serve one session.
  void applicators() {
    for (const ToolUse& use : uses_) {
      const bool anew = job_.data.methods.at(use.method).applicator_each_session;
      add({.item = Item::applicator,
           .amount = anew ? 1.0 * (use.sessions + use.cleanings) : 1.0,
           .coating = use.coating,
           .method = use.method,
           .sessions = use.sessions,
           .cleanings = use.cleanings});
    }
  }

  void wraps() {
    int wrappings = 0;
    for (const ToolUse& use : uses_) wrappings += use.wrappings;
    if (wrappings > 0) add({.item = Item::wrap, .amount = 1.0 * wrappings});
  }

  void abrasives() {
    struct Use {
      double sheets = 0;
      Area area;
    };
    std::map<Grit, Use> grits;
    for (const Operation& operation : list_.operations)
      if (operation.grit && !operation.done) {
        Use& use = grits[*operation.grit];
        use.sheets += operation.sheets;
        use.area += operation.area;
      }
    for (const auto& [grit, use] : grits)
      if (use.sheets > 0)
        add({.item = Item::abrasive,
             .amount = whole_up(use.sheets),
             .origin = job_.data.labour.abrasive_bare.origin,
             .grit = grit,
             .area = use.area});
  }

  void wiping_cloths() {
    const auto& sessions_per_cloth = job_.data.shop.sessions_per_cloth;
    for (const CoatingNeed& need : volumes_.coatings) {
      const int sessions = sessions_with(uses_, need.coating);
      if (job_.coatings.at(need.coating).words.wipe_with.empty() || sessions == 0) continue;
      add({.item = Item::dusting_cloth,
           .amount = whole_up(1.0 * sessions / sessions_per_cloth.value),
           .origin = sessions_per_cloth.origin,
           .coating = need.coating});
    }
  }

  void touches() {
    std::set<std::size_t> listed;
    for (const Operation& operation : list_.operations)
      if (operation.touch && !operation.done && listed.insert(*operation.touch).second)
        add({.item = Item::for_touch, .amount = 1, .touch = operation.touch});
  }

  void protection() {
    if (sessions_ > 0) {
      add({.item = Item::gloves, .amount = 1.0 * sessions_});
      add({.item = Item::eye_protection, .amount = 1});
      worn_to_coat();
    }
    Duration sanding;
    for (const Operation& operation : list_.operations)
      if (operation.grit && !operation.done) sanding += operation.work;
    if (sanding <= Duration{}) return;
    const auto& lasts = job_.data.shop.dust_mask_lasts;
    add({.item = Item::dust_mask,
         .amount = whole_up(sanding / lasts.value),
         .origin = lasts.origin,
         .work = sanding});
  }

  void worn_to_coat() {
    const auto worn = respirator(job_, list_, volumes_);
    if (!worn) return;
    add({.item = Item::respirator, .amount = 1, .respirator = worn});
    if (worn->against_sprayed_isocyanates) add({.item = Item::suit, .amount = 1});
  }

  void small_things() {
    if (sessions_ == 0) return;
    const auto& rags = job_.data.shop.rags_per_session;
    add({.item = Item::rag,
         .amount = 1.0 * rags.value * sessions_,
         .origin = rags.origin,
         .sessions = sessions_,
         .each_session = rags.value});
    const bool oily = std::ranges::any_of(volumes_.coatings, [&](const CoatingNeed& need) {
      return job_.coatings.at(need.coating).dries_by_oxidation;
    });
    if (oily) add({.item = Item::lidded_can, .amount = 1});
    add({.item = Item::stirring_stick, .amount = 1.0 * sessions_});
    two_part_things();
    add({.item = Item::strainer, .amount = 1.0 * sessions_});
  }

  void two_part_things() {
    bool any = false;
    for (const CoatingNeed& need : volumes_.coatings) {
      if (!job_.coatings.at(need.coating).pot_life) continue;
      any = true;
      add({.item = Item::hardener, .amount = 1, .coating = need.coating});
    }
    if (any) add({.item = Item::measuring_cup, .amount = 1});
  }

  const Job& job_;
  const JobVolumes& volumes_;
  const OperationList& list_;
  const std::vector<ToolUse>& uses_;
  int sessions_ = 0;
  std::vector<Sundry> sundries_;
};

}  // namespace

std::vector<Sundry> sundries(const Job& job, const JobVolumes& volumes, const OperationList& list,
                             const std::vector<ToolUse>& uses, Length tape) {
  return SundryList(job, volumes, list, uses).result(tape);
}

}  // namespace tackfree
