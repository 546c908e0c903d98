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
      const bool turns_back = op.kind == OperationKind::turn_over && op.side == Side::back;
      if (!op.done && (op.coating || turns_back))
        for (const Wait& wait : waits_of(op, below))
          if (!keeps(i, wait)) op.waits.push_back(wait);
      if (op.coating) below.push_back(i);
    }
  }

 private:
  const Coating& coating(std::size_t coat) const {
    return job_.coatings.at(*list_.operations[coat].coating);
  }

  /// Of a coat, or of turning the parts for it.
  std::vector<Wait> waits_of(const Operation& work, const std::vector<std::size_t>& below) const {
    std::vector<Wait> waits;
    if (work.coating && !below.empty()) add_below(work, below, waits);
    // The parts lie on their other side.
    for (const auto& [where, lying] : lying_)
      if (where.first == work.batch && where.second != work.side && !lying.empty() &&
          coating(lying.back()).label_after.at(index_of(Stage::handle)))
        waits.push_back({.operation = lying.back(), .stage = Stage::handle});
    return waits;
  }

  void add_below(const Operation& coat, const std::vector<std::size_t>& below,
                 std::vector<Wait>& waits) const {
    const std::size_t last = below.back();
    const Coating& under = coating(last);
    const Coating& upper = job_.coatings.at(*coat.coating);
    const bool recoated = under.label_after.at(index_of(Stage::recoat)).has_value();
    if (recoated) waits.push_back({.operation = last, .stage = Stage::recoat});
    if (list_.operations[last].step != coat.step)
      if (const auto wait = pair_wait(job_.data, under, upper))
        waits.push_back({.operation = last, .dry_for = wait->value});
    std::vector<std::size_t> melted = below;
    std::erase_if(melted, [&](std::size_t each) { return !coating(each).coats_a_day_max; });
    const auto from_top = [&](int coats) {
      const auto back = static_cast<std::size_t>(coats);
      return back > melted.size() ? std::nullopt : std::optional(melted[melted.size() - back]);
    };
    if (recoated && under.coats_a_day_max)
      for (int films = 2; films <= under.coats_a_day_max->value; ++films)
        if (const auto first = from_top(films))
          waits.push_back({.operation = *first, .stage = Stage::recoat, .films = films});
    if (upper.coats_a_day_max)
      if (const auto first = from_top(upper.coats_a_day_max->value))
        waits.push_back({.operation = *first, .next_day = true});
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

  bool is_as_long(const Wait& wait, const Wait& wanted) const {
    if (wait.operation != wanted.operation) return false;
    if (wanted.next_day) return wait.next_day;
    if (wanted.dry_for) return wait.dry_for && *wait.dry_for >= *wanted.dry_for;
    return wait.stage && wait.films >= wanted.films &&
           comes_later(coating(wait.operation), *wait.stage, *wanted.stage);
  }

  /// Not where the tin gives hours at several temperatures: then in some air one stage may come
  /// first and in other air the other.
  static bool comes_later(const Coating& coating, Stage later, Stage stage) {
    if (later == stage) return true;
    if (depth_of(later) != depth_of(stage)) return false;
    for (const Stage each : {later, stage})
      if (!coating.label_points.at(index_of(each)).empty()) return false;
    const auto& last = coating.label_after.at(index_of(later));
    const auto& first = coating.label_after.at(index_of(stage));
    return last && first && last->value >= first->value;
  }

  OperationList& list_;
  const Job& job_;
  std::map<std::pair<std::size_t, Side>, std::vector<std::size_t>> lying_;
};

}  // namespace

void wait_for_coats_below(OperationList& list, const Job& job) { WaitingCoats(list, job).add(); }

}  // namespace tackfree
