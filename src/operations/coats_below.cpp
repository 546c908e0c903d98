#include "tackfree/operations/coats_below.hpp"

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

namespace tackfree {

namespace {

class WaitingCoats {
 public:
  WaitingCoats(OperationList& list, const Job& job) : list_(list), job_(job) {}

  void add() {
    for (std::size_t i = 0; i < list_.operations.size(); ++i) {
      Operation& op = list_.operations[i];
      if (op.skipped()) continue;
      std::vector<std::size_t>& below = lying_[{op.batch, op.side}];
      if (op.takes_off && !below.empty()) below.pop_back();
      if (!op.coating) continue;
      if (!op.done && !below.empty())
        for (const Wait& wait : waits_for(below, op))
          if (!keeps(i, wait)) op.waits.push_back(wait);
      below.push_back(i);
    }
  }

 private:
  const Coating& coating(std::size_t coat) const {
    return job_.coatings.at(*list_.operations[coat].coating);
  }

  std::vector<Wait> waits_for(const std::vector<std::size_t>& below, const Operation& over) const {
    const std::size_t last = below.back();
    const Coating& under = coating(last);
    const Coating& upper = job_.coatings.at(*over.coating);
    std::vector<Wait> waits;
    const bool recoated = under.label_after.at(index_of(Stage::recoat)).has_value();
    if (recoated) waits.push_back({.operation = last, .stage = Stage::recoat});
    if (list_.operations[last].step != over.step)
      if (const FollowRule* rule = follow_rule(job_.data, under, upper); rule && rule->dry_for)
        waits.push_back({.operation = last, .dry_for = rule->dry_for->value});
    std::vector<std::size_t> melted = below;
    std::erase_if(melted, [&](std::size_t coat) { return !coating(coat).coats_a_day_max; });
    if (recoated && under.coats_a_day_max)
      for (int films = 2; films <= under.coats_a_day_max->value; ++films)
        if (const auto back = static_cast<std::size_t>(films); back <= melted.size())
          waits.push_back(
              {.operation = melted[melted.size() - back], .stage = Stage::recoat, .films = films});
    if (upper.coats_a_day_max)
      if (const auto day = static_cast<std::size_t>(upper.coats_a_day_max->value);
          day <= melted.size())
        waits.push_back({.operation = melted[melted.size() - day], .next_day = true});
    return waits;
  }

  /// Does the coat wait so long already, or what it waits for and is still to come?
  bool keeps(std::size_t coat, const Wait& wanted) const {
    std::vector<std::size_t> open{coat};
    // Ends because work only ever waits for what stands before it in the list.
    while (!open.empty()) {
      const std::size_t at = open.back();
      open.pop_back();
      const Operation& op = list_.operations[at];
      if (op.done) continue;
      if (op.right_after) open.push_back(at - 1);
      for (const Wait& wait : op.waits) {
        if (is_as_long(wait, wanted)) return true;
        if (list_.operations[wait.operation].batch == op.batch &&
            wait.operation >= wanted.operation)
          open.push_back(wait.operation);
      }
    }
    return false;
  }

  /// A film that may be sanded may be recoated; but where the tin gives hours at several
  /// temperatures, in some air one may come first and in other air the other.
  bool is_as_long(const Wait& wait, const Wait& wanted) const {
    if (wait.operation != wanted.operation) return false;
    if (wanted.next_day) return wait.next_day;
    if (wanted.dry_for) return wait.dry_for && *wait.dry_for >= *wanted.dry_for;
    const auto& points = coating(wanted.operation).label_points;
    const bool by_rows =
        !points.at(index_of(Stage::sand)).empty() || !points.at(index_of(Stage::recoat)).empty();
    return wait.films >= wanted.films &&
           (wait.stage == Stage::recoat || (wait.stage == Stage::sand && !by_rows));
  }

  OperationList& list_;
  const Job& job_;
  std::map<std::pair<std::size_t, Side>, std::vector<std::size_t>> lying_;
};

}  // namespace

void wait_for_coats_below(OperationList& list, const Job& job) { WaitingCoats(list, job).add(); }

}  // namespace tackfree
