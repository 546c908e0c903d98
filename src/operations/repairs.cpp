#include "tackfree/operations/repairs.hpp"

#include "tackfree/operations/how_to.hpp"
#include "tackfree/operations/sanding.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
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
  bool takes_off = false;           ///< the coat, down to what it was put on
};

const Rule& rule_for(Fault fault) {
  static const std::array<Rule, 6> rules{
      Rule{"run", Grit{320}, 0.1, Stage::sand, 2, false, true, false},
      Rule{"rinkle", Grit{220}, 1.0, Stage::sand, 2, true, false, false},
      Rule{"isheyes", std::nullopt, 1.0, std::nullopt, 1, true, false, false, true},
      Rule{"lush", std::nullopt, 1.0, Stage::recoat, 1, false, false, true},
      Rule{"tacky", std::nullopt, 0, std::nullopt, 1, false, false, false},
      Rule{"anded through", std::nullopt, 0.1, std::nullopt, 1, false, true, true}};
  return rules.at(static_cast<std::size_t>(fault));
}

/// Lines of the log on coats and other work, by the key of the operation.
using LinesOfWork = std::map<std::string_view, const LogEntry*>;

LinesOfWork lines_of_work(const History& history) {
  LinesOfWork lines;
  for (const LogEntry& entry : history.entries)
    if (entry.kind == LogKind::coat || entry.kind == LogKind::done ||
        entry.kind == LogKind::skipped)
      lines.try_emplace(entry.step, &entry);
  return lines;
}

/// Adds one repair.
class Repairing {
 public:
  Repairing(const Job& job, OperationList list, const KeyedCoats& keyed, const LinesOfWork& logged,
            std::size_t coat, const LogEntry& seen)
      : job_(job),
        list_(std::move(list)),
        keyed_(keyed),
        logged_(logged),
        coat_(coat),
        fault_(*seen.fault),
        seen_at_(seen.at),
        rule_(rule_for(fault_)) {}

  OperationList repaired() {
    const Operation coat = list_.operations[coat_];
    const std::size_t after = after_work_before(coat);
    find_work_over(coat, after);
    if (is_coated_over(coat)) return std::move(list_);
    place_ = place(coat, after);
    std::vector<Operation> work{repair(coat)};
    if (is_coated_again(coat)) {
      if (auto sanding = sanding_before(coat)) work.push_back(std::move(*sanding));
      again_ = place_ + work.size();
      work.push_back(coat_again(coat, work.back()));
      if (auto sanding = sanding_once_more(coat)) {
        sanded_ = place_ + work.size();
        work.push_back(std::move(*sanding));
      }
    }
    make_room(work.size());
    follow();
    std::ranges::move(work, list_.operations.begin() + static_cast<std::ptrdiff_t>(place_));
    return std::move(list_);
  }

 private:
  const Coating& coating(const Operation& coat) const { return job_.coatings.at(*coat.coating); }

  /// What the log says of an operation up to the hour at which the fault was seen.
  const LogEntry* line_before(const Operation& op) const {
    const auto found = logged_.find(op.key);
    return found == logged_.end() || found->second->at > seen_at_ ? nullptr : found->second;
  }

  /// The place after the coat, and after all that was done to the batch before the fault was seen:
  /// a repair cannot have come before that.
  std::size_t after_work_before(const Operation& coat) const {
    const auto& operations = list_.operations;
    std::size_t last = coat_;
    for (std::size_t i = coat_ + 1; i < operations.size(); ++i)
      if (operations[i].batch == coat.batch && line_before(operations[i])) last = i;
    std::size_t after = last + 1;
    while (after < operations.size() && operations[after].right_after) ++after;
    return after;
  }

  /// The coat, and what was done over it before the fault was seen.
  void find_work_over(const Operation& coat, std::size_t after) {
    over_ = {coat_};
    for (std::size_t i = coat_ + 1; i < after; ++i) {
      const Operation& op = list_.operations[i];
      const bool goes_with_it = op.right_after && over_.contains(i - 1);
      if (op.batch == coat.batch && (goes_with_it || waits_for_coat(i))) over_.insert(i);
    }
  }

  /// Under another coat nothing is left to repair.
  bool is_coated_over(const Operation& coat) const {
    return std::ranges::any_of(over_, [&](std::size_t i) {
      const Operation& op = list_.operations[i];
      const LogEntry* line = line_before(op);
      const bool skipped = line != nullptr && line->kind == LogKind::skipped;
      return i != coat_ && op.coating && op.side == coat.side && !skipped;
    });
  }

  /// `after`, or for a run on a hidden back with the next work on the coat, not before turning.
  std::size_t place(const Operation& coat, std::size_t after) const {
    const bool hidden = rule_.grit && rule_.share < 1 && coat.side == Side::back;
    if (!hidden || is_coated_again(coat)) return after;
    for (std::size_t i = after; i < list_.operations.size(); ++i)
      if (list_.operations[i].kind != OperationKind::turn_over && waits_for_coat(i)) return i;
    return after;
  }

  bool waits_for_coat(std::size_t operation) const {
    return std::ranges::any_of(list_.operations[operation].waits,
                               [&](const Wait& wait) { return over_.contains(wait.operation); });
  }

  bool is_coated_again(const Operation& coat) const {
    if (coating(coat).wipe_off_after) return false;
    const bool last = std::ranges::any_of(list_.outcomes, [&](const Outcome& outcome) {
      return std::ranges::find(outcome.coats, coat_) != outcome.coats.end();
    });
    return rule_.coat_again || (rule_.coat_again_if_last && last);
  }

  std::string free_key(const std::string& key) const {
    std::set<std::string_view> taken;
    for (const Operation& op : list_.operations)
      if (op.key.starts_with(key)) taken.insert(op.key);
    std::string free = key;
    for (int number = 2; taken.contains(free); ++number) free = fmt::format("{}-{}", key, number);
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
    op.spots = rule_.share < 1;
    op.takes_off = rule_.takes_off && is_coated_again(coat);
    op.work = std::max(shortest_repair, op.area / job_.data.labour.sand_between.value);
    if (op.grit) op.sheets = op.area / job_.data.labour.abrasive_between.value;
    op.waits.push_back({.operation = coat_, .stage = rule_.wait, .films = rule_.films});
    if (std::string how = repair_advice(job_, coating(coat), fault_); !how.empty())
      op.how.push_back(std::move(how));
    return op;
  }

  /// What the coat is put on again over: the one below where it was washed off, else itself.
  std::optional<std::size_t> lies_below(const Operation& coat) const {
    if (!rule_.takes_off) return coat_;
    for (std::size_t i = coat_; i-- > 0;) {
      const Operation& op = list_.operations[i];
      if (op.batch == coat.batch && op.coating && op.side == coat.side) return i;
    }
    return std::nullopt;
  }

  /// All of the side is sanded before the coat goes on again, where that comes too late to hold.
  std::optional<Operation> sanding_before(const Operation& coat) const {
    CoatPlace place = place_of(coat);
    ++place.again;
    const auto below = lies_below(coat);
    if (!below || !keyed_.contains(place)) return std::nullopt;
    const Coating& under = coating(list_.operations[*below]);
    const auto grit = key_grit(under);
    if (!grit) return std::nullopt;
    const Labour& labour = job_.data.labour;
    Operation op;
    std::string key =
        fmt::format("{}/sand-p{}-again", coat.key.substr(0, coat.key.rfind('/')), grit->p);
    if (place.again > 1) key += fmt::format("-{}", place.again);
    op.key = free_key(key);
    op.kind = OperationKind::sand_between;
    op.batch = coat.batch;
    op.step = coat.step;
    op.coat = coat.coat;
    op.coats = coat.coats;
    op.side = coat.side;
    op.area = coat.area;
    op.grit = grit;
    op.work = op.area / labour.sand_between.value;
    op.sheets = op.area / labour.abrasive_between.value;
    op.waits = {{.operation = *below, .stage = Stage::sand},
                {.operation = place_, .delay = after_repair(coat)}};
    op.how = how_to(job_.data.texts, op, under);
    return op;
  }

  /// After the repair, or the sanding that follows it, which stand before it in the list.
  Operation coat_again(const Operation& coat, const Operation& before) const {
    Operation op = coat;
    op.key = free_key(coat.key + "-again");
    ++op.again;
    op.right_after.reset();
    op.waits = {{.operation = again_ - 1,
                 .delay = before.kind == OperationKind::repair
                              ? after_repair(coat)
                              : job_.data.labour.dust_settles.value}};
    return op;
  }

  /// What was sanded before the fault was seen was the coat that is lost.
  std::optional<Operation> sanding_once_more(const Operation& coat) {
    for (const std::size_t i : over_)
      if (list_.operations[i].kind == OperationKind::sand_between) lost_sanding_ = i;
    if (lost_sanding_ == 0) return std::nullopt;
    const Labour& labour = job_.data.labour;
    Operation op = list_.operations[lost_sanding_];
    op.key = free_key(op.key);
    op.side = coat.side;
    op.area = coat.area;
    op.work = op.area / labour.sand_between.value;
    op.sheets = op.area / labour.abrasive_between.value;
    for (Wait& wait : op.waits)
      if (wait.operation == coat_) wait.operation = again_;
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

  /// What waited for the coat, or for what was done over it, waits for what came in its place.
  void follow() {
    const Operation coat = list_.operations[coat_];
    for (std::size_t i = place_; i < list_.operations.size(); ++i) {
      bool follows = false;
      for (Wait& wait : list_.operations[i].waits) {
        if (!over_.contains(wait.operation)) continue;
        if (again_ > 0 && wait.operation == coat_)
          wait.operation = again_;
        else if (sanded_ > 0 && wait.operation == lost_sanding_)
          wait.operation = sanded_;
        else
          follows = true;
      }
      if (!follows) continue;
      if (again_ > 0)
        list_.operations[i].waits.push_back({.operation = sanded_ > 0 ? sanded_ : again_});
      else
        list_.operations[i].waits.push_back({.operation = place_, .delay = after_repair(coat)});
    }
    if (again_ == 0) return;
    for (Outcome& outcome : list_.outcomes) std::ranges::replace(outcome.coats, coat_, again_);
  }

  const Job& job_;
  OperationList list_;
  const KeyedCoats& keyed_;
  const LinesOfWork& logged_;
  std::size_t coat_;
  Fault fault_;
  Instant seen_at_;
  const Rule& rule_;
  std::set<std::size_t> over_;    ///< the coat, and what was done over it by then
  std::size_t place_ = 0;         ///< of the repair
  std::size_t again_ = 0;         ///< of the coat that is put on again; 0: none is
  std::size_t lost_sanding_ = 0;  ///< of the coat that is lost; 0: none
  std::size_t sanded_ = 0;        ///< where that is done once more; 0: nowhere
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

OperationList with_repairs(const OperationList& list, const Job& job, const KeyedCoats& keyed) {
  OperationList result = list;
  const LinesOfWork logged = lines_of_work(job.history);
  for (const LogEntry& entry : job.history.entries) {
    if (!entry.fault || *entry.fault == Fault::tacky) continue;
    if (result.operations.size() >= most_listed) break;
    for (std::size_t i = 0; i < result.operations.size(); ++i)
      if (result.operations[i].key == entry.step && result.operations[i].coating) {
        result = Repairing(job, std::move(result), keyed, logged, i, entry).repaired();
        break;
      }
  }
  return result;
}

}  // namespace tackfree
