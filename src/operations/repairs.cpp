#include "tackfree/operations/repairs.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr Duration shortest_repair = minutes(10);  // assumed

/// What a fault asks for.
struct Rule {
  std::string_view keyword;         ///< in the advice of the classes
  std::optional<Grit> grit;         ///< sanded with; nothing: touched up, or washed off
  double share = 0.1;               ///< of the side's area
  std::optional<Stage> wait;        ///< of the coat; nothing: at once
  int films = 1;                    ///< as thick as so many
  bool coat_again = false;          ///< in every coat
  bool coat_again_if_last = false;  ///< in a last coat alone
  bool spot_dries = false;          ///< before the next coat
};

const Rule& rule_for(Fault fault) {
  static const std::array<Rule, 6> rules{
      Rule{"run", Grit{320}, 0.1, Stage::sand, 2, false, true, false},
      Rule{"rinkle", Grit{220}, 1.0, Stage::sand, 2, true, false, false},
      Rule{"isheyes", std::nullopt, 1.0, std::nullopt, 1, true, false, false},
      Rule{"lush", std::nullopt, 1.0, Stage::recoat, 1, false, false, true},
      Rule{"tacky", std::nullopt, 0, std::nullopt, 1, false, false, false},
      Rule{"anded through", std::nullopt, 0.1, std::nullopt, 1, false, true, true}};
  return rules.at(static_cast<std::size_t>(fault));
}

/// Adds one repair.
class Repairing {
 public:
  Repairing(const Job& job, OperationList list, std::size_t coat, Fault fault)
      : job_(job), list_(std::move(list)), coat_(coat), fault_(fault), rule_(rule_for(fault)) {}

  OperationList repaired() {
    const Operation coat = list_.operations[coat_];
    place_ = coat_ + 1;
    while (place_ < list_.operations.size() && list_.operations[place_].right_after) ++place_;
    const bool again = is_coated_again(coat);
    Operation work = repair(coat);
    make_room(again ? 2 : 1);
    follow(again);
    list_.operations[place_] = std::move(work);
    if (again) list_.operations[place_ + 1] = coat_again(coat);
    return std::move(list_);
  }

 private:
  const Coating& coating(const Operation& coat) const { return job_.coatings.at(*coat.coating); }

  bool is_coated_again(const Operation& coat) const {
    if (coating(coat).wipe_off_after) return false;
    const bool last = std::ranges::any_of(list_.outcomes, [&](const Outcome& outcome) {
      return std::ranges::find(outcome.coats, coat_) != outcome.coats.end();
    });
    return rule_.coat_again || (rule_.coat_again_if_last && last);
  }

  std::string free_key(const std::string& key) const {
    std::string free = key;
    const auto taken = [&] {
      return std::ranges::find(list_.operations, free, &Operation::key) != list_.operations.end();
    };
    for (int number = 2; taken(); ++number) free = fmt::format("{}-{}", key, number);
    return free;
  }

  Operation repair(const Operation& coat) const {
    Operation op;
    std::string word(fault_words.at(static_cast<std::size_t>(fault_)));
    std::ranges::replace(word, '_', '-');
    op.key = free_key(coat.key.substr(0, coat.key.rfind('/')) + "/repair-" + word);
    op.kind = OperationKind::repair;
    op.fault = fault_;
    op.batch = coat.batch;
    op.step = coat.step;
    op.coat = coat.coat;
    op.coats = coat.coats;
    op.side = coat.side;
    op.area = coat.area * rule_.share;
    op.grit = rule_.grit;
    op.work = std::max(shortest_repair, op.area / job_.data.labour.sand_between.value);
    if (op.grit) op.sheets = op.area / job_.data.labour.abrasive_between.value;
    op.waits.push_back({.operation = coat_, .stage = rule_.wait, .films = rule_.films});
    if (std::string how = repair_advice(job_, coating(coat), fault_); !how.empty())
      op.how.push_back(std::move(how));
    return op;
  }

  Operation coat_again(const Operation& coat) const {
    Operation op = coat;
    op.key = free_key(coat.key + "-again");
    op.again = true;
    op.right_after.reset();
    op.waits = {{.operation = place_, .delay = after_repair(coat)}};
    return op;
  }

  Duration after_repair(const Operation& coat) const {
    if (rule_.grit) return job_.data.labour.dust_settles.value;
    const auto& label = coating(coat).label_after.at(index_of(Stage::recoat));
    return rule_.spot_dries && label ? label->value : Duration();
  }

  /// Moves what comes after by so many places.
  void make_room(std::size_t count) {
    list_.operations.insert(list_.operations.begin() + static_cast<std::ptrdiff_t>(place_), count,
                            Operation());
    for (Operation& op : list_.operations)
      for (Wait& wait : op.waits)
        if (wait.operation >= place_) wait.operation += count;
    for (Outcome& outcome : list_.outcomes)
      for (std::size_t& coat : outcome.coats)
        if (coat >= place_) coat += count;
  }

  /// What waited for the coat waits for what came in its place.
  void follow(bool again) {
    const Operation coat = list_.operations[coat_];
    for (std::size_t i = place_; i < list_.operations.size(); ++i) {
      bool waits = false;
      for (Wait& wait : list_.operations[i].waits) {
        if (wait.operation != coat_) continue;
        waits = true;
        if (again) wait.operation = place_ + 1;
      }
      if (waits && !again)
        list_.operations[i].waits.push_back({.operation = place_, .delay = after_repair(coat)});
    }
    if (!again) return;
    for (Outcome& outcome : list_.outcomes) std::ranges::replace(outcome.coats, coat_, place_ + 1);
  }

  const Job& job_;
  OperationList list_;
  std::size_t coat_;
  Fault fault_;
  const Rule& rule_;
  std::size_t place_ = 0;
};

}  // namespace

std::string repair_advice(const Job& job, const Coating& coating, Fault fault) {
  const std::string_view keyword =
      fault == Fault::blush && coating.class_key.find("water") != std::string::npos
          ? "Milky"
          : rule_for(fault).keyword;
  for (const std::string& key : coating.words.advice) {
    if (!key.starts_with("repair_")) continue;
    for (const Advice& advice : job.data.texts.advice) {
      if (advice.key != key) continue;
      for (const std::string& line : advice.lines)
        if (line.find(keyword) != std::string::npos) return line;
    }
  }
  return {};
}

OperationList with_repairs(const OperationList& list, const Job& job) {
  OperationList result = list;
  for (const LogEntry& entry : job.history.entries) {
    if (!entry.fault || *entry.fault == Fault::tacky) continue;
    for (std::size_t i = 0; i < result.operations.size(); ++i)
      if (result.operations[i].key == entry.step && result.operations[i].coating) {
        result = Repairing(job, std::move(result), i, *entry.fault).repaired();
        break;
      }
  }
  return result;
}

}  // namespace tackfree
