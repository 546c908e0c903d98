#include "tackfree/shopping/sundries.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>

namespace tackfree {
namespace {

/// `1 session`, `3 sessions`
std::string counted(int number, std::string_view thing) {
  return fmt::format("{} {}{}", number, thing, number == 1 ? "" : "s");
}

/// `one` of a thing, or several.
std::string one_or_more(double amount, const char* one, const char* more) {
  return amount == 1 ? one : more;
}

std::string area_text(Area area, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.0f} sq ft", area.in(square_feet))
                                 : fmt::format("{:.1f} m2", area.in(square_metres));
}

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
    if (tape > Length{})
      add("masking tape", whole_units(tape).in(metres), Sundry::Unit::metre,
          "around what is masked");
    protection();
    small_things();
    return std::move(sundries_);
  }

 private:
  /// Up to whole metres, or to whole feet where those are printed.
  Length whole_units(Length length) const {
    return job_.units == UnitSystem::us ? feet(whole_up(length.in(feet)))
                                        : metres(whole_up(length.in(metres)));
  }

  void add(std::string what, double amount, Sundry::Unit unit, std::string why,
           Origin origin = Origin::practice) {
    sundries_.push_back({.what = std::move(what),
                         .amount = amount,
                         .unit = unit,
                         .why = std::move(why),
                         .origin = origin});
  }

  /// Brushes and guns are cleaned and used again; rollers and cloths serve one session.
  void applicators() {
    for (const ToolUse& use : uses_) {
      const Method& method = job_.data.methods.at(use.method);
      const std::string sessions = counted(use.sessions, "session");
      const std::string what =
          fmt::format("{}, for {}", method.applicator, job_.coatings.at(use.coating).name);
      if (method.applicator_each_session)
        add(what, use.sessions + use.cleanings, Sundry::Unit::piece,
            "one a session, for " + sessions +
                (use.cleanings > 0 ? fmt::format(", and {} for after a pause", use.cleanings)
                                   : ""));
      else
        add(what, 1, Sundry::Unit::piece, "cleaned after each of " + sessions);
    }
  }

  void wraps() {
    int wrappings = 0;
    for (const ToolUse& use : uses_) wrappings += use.wrappings;
    if (wrappings > 0)
      add(one_or_more(wrappings, "airtight bag or wrap", "airtight bags or wraps"), wrappings,
          Sundry::Unit::piece, "to keep a tool wet between two coats");
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
        add(fmt::format("{}, P{}",
                        one_or_more(whole_up(use.sheets), "abrasive sheet or disc",
                                    "abrasive sheets or discs"),
                        grit.p),
            whole_up(use.sheets), Sundry::Unit::sheet, "for " + area_text(use.area, job_.units),
            job_.data.labour.abrasive_bare.origin);
  }

  void wiping_cloths() {
    const auto& sessions_per_cloth = job_.data.shop.sessions_per_cloth;
    for (const CoatingNeed& need : volumes_.coatings) {
      const Coating& coating = job_.coatings.at(need.coating);
      const int sessions = sessions_with(uses_, need.coating);
      if (coating.words.wipe_with.empty() || sessions == 0) continue;
      add("cloths to take the dust off", whole_up(1.0 * sessions / sessions_per_cloth.value),
          Sundry::Unit::piece, fmt::format("{}, before {}", coating.words.wipe_with, coating.name),
          sessions_per_cloth.origin);
    }
  }

  void protection() {
    if (sessions_ > 0)
      add(one_or_more(sessions_, "pair of nitrile gloves", "pairs of nitrile gloves"), sessions_,
          Sundry::Unit::piece, "one pair a session");
    Duration sanding;
    for (const Operation& operation : list_.operations)
      if (operation.grit && !operation.done) sanding += operation.work;
    if (sanding <= Duration{}) return;
    const double masks = whole_up(sanding / job_.data.shop.dust_mask_lasts.value);
    add(one_or_more(masks, "dust mask", "dust masks") + ", N95 or better", masks,
        Sundry::Unit::piece, fmt::format("for {:.1f} h of sanding", sanding.in(hours)),
        job_.data.shop.dust_mask_lasts.origin);
  }

  void small_things() {
    if (sessions_ == 0) return;
    const std::string sessions = "for " + counted(sessions_, "session");
    const auto& rags = job_.data.shop.rags_per_session;
    add(one_or_more(rags.value * sessions_, "rag", "rags"), rags.value * sessions_,
        Sundry::Unit::piece, fmt::format("{} a session, {}", rags.value, sessions), rags.origin);
    const bool oily = std::ranges::any_of(volumes_.coatings, [&](const CoatingNeed& need) {
      return job_.coatings.at(need.coating).dries_by_oxidation;
    });
    if (oily)
      add("metal can with a tight lid, for oily rags", 1, Sundry::Unit::piece,
          "rags with oil finish heat themselves");
    add(one_or_more(sessions_, "stirring stick", "stirring sticks"), sessions_, Sundry::Unit::piece,
        "one a session");
    add(one_or_more(sessions_, "strainer", "strainers"), sessions_, Sundry::Unit::piece,
        "one a session");
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
