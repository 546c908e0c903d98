#include "tackfree/evening/unlogged.hpp"

#include "tackfree/logged/logged_hours.hpp"
#include "tackfree/plan/make_plan.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace tackfree {

namespace {

constexpr std::size_t most_asked = 2;
/// Pieces of work that are looked at for a question, the latest first; each costs areas and air.
constexpr std::size_t most_tried = 6;

class Asking {
 public:
  Asking(const Plan& plan, const Job& job, const std::vector<LastPlan>& planned, Instant now,
         solver::Effort& effort)
      : plan_(plan), job_(job), now_(now), effort_(effort) {
    const std::vector<Interval> away = logged_away(job, now);
    const auto nobody_there = [&](const Interval& time) {
      return std::ranges::any_of(away, [&](const Interval& each) {
        return each.begin < time.end && time.begin < each.end;
      });
    };
    // A plan that was replaced counts up to when it was.
    Instant until = now;
    for (const LastPlan& each : planned) {
      for (const LastStep& step : each.steps)
        if (!step.done && step.time.end <= until && !nobody_there(step.time))
          due_.try_emplace(step.key, step.time);
      until = std::min(until, each.now);
    }
  }

  Unlogged result() {
    std::vector<UnloggedWork> all = found();
    std::ranges::stable_sort(all, [](const UnloggedWork& a, const UnloggedWork& b) {
      return a.planned.end > b.planned.end;
    });
    Unlogged result;
    std::size_t tried = 0;
    for (UnloggedWork& work : all) {
      if (result.asked.size() == most_asked || tried == most_tried) {
        result.older.push_back(std::move(work));
        continue;
      }
      ++tried;
      if (answer(work)) result.asked.push_back(std::move(work));
    }
    return result;
  }

 private:
  const std::vector<Operation>& operations() const { return plan_.list.operations; }

  bool is_due(const Operation& op) const {
    return !op.done && op.kind != OperationKind::dust_off && op.kind != OperationKind::wipe_off &&
           due_.contains(op.key);
  }

  bool later_is_logged(std::size_t index) const {
    return std::any_of(operations().begin() + static_cast<std::ptrdiff_t>(index),
                       operations().end(), [&](const Operation& op) {
                         return op.batch == operations()[index].batch && op.done && op.done->logged;
                       });
  }

  /// Of one sanding: `op` is a finer grit after `before`.
  static bool goes_on(const Operation& before, const Operation& op) {
    return before.grit && op.grit && before.batch == op.batch && before.kind == op.kind &&
           before.step == op.step && before.coat == op.coat && op.kind != OperationKind::repair;
  }

  /// In the order of the list, each batch as far as its first coat that is not on.
  std::vector<UnloggedWork> found() const {
    std::vector<UnloggedWork> all;
    std::set<std::size_t> waiting;
    for (std::size_t i = 0; i < operations().size(); ++i) {
      const Operation& op = operations()[i];
      if (op.done || waiting.contains(op.batch)) continue;
      if (op.kind == OperationKind::coat) waiting.insert(op.batch);
      if (!is_due(op) || later_is_logged(i)) continue;
      const Interval time = due_.at(op.key);
      if (i > 0 && !all.empty() && all.back().operations.back() == i - 1 &&
          goes_on(operations()[i - 1], op)) {
        all.back().operations.push_back(i);
        all.back().planned.end = std::max(all.back().planned.end, time.end);
        continue;
      }
      all.push_back({.operations = {i}, .planned = time, .if_not = begin_of(i)});
    }
    return all;
  }

  std::optional<Instant> begin_of(std::size_t operation) const {
    for (const DatedStep& step : plan_.schedule.steps)
      if (step.operation == operation) return step.begin();
    return std::nullopt;
  }

  /// What a person may type, the shortest first.
  std::vector<Report> reports(const UnloggedWork& work) const {
    const Operation& op = operations()[work.operations.back()];
    const auto& batches = plan_.job.batches;
    Report report{.at = work.planned.end};
    if (batches.size() > 1) report.batch = batches.at(op.batch).name;
    if (op.kind == OperationKind::coat) {
      report.kind = LogKind::coat;
      Report exact = report;
      exact.coat = op.coat;
      exact.side = word_for(op.side);
      return {report, exact};
    }
    report.kind = LogKind::done;
    Report exact = report;
    report.step = op.key.substr(op.key.rfind('/') + 1);
    exact.step = op.key;
    return {report, exact};
  }

  /// Nothing to ask where the log would not take it: it cannot have been done as planned.
  bool answer(UnloggedWork& work) {
    for (const Report& report : reports(work)) {
      Problems problems;
      auto told = understood(job_, report, now_, problems);
      if (!told || !problems.empty()) continue;
      if (told->entry.step != operations()[work.operations.back()].key) continue;
      Job with = job_;
      told->entry.id = with.history.next_id++;
      with.history.entries.push_back(std::move(told->entry));
      work.report = report;
      work.if_done = make_plan(with, now_, problems, {}, &effort_);
      return work.if_done.has_value();
    }
    return false;
  }

  const Plan& plan_;
  const Job& job_;
  Instant now_;
  solver::Effort& effort_;
  std::map<std::string, Interval, std::less<>> due_;  ///< by key of the operation
};

}  // namespace

Unlogged unlogged(const Plan& plan, const Job& job, const std::vector<LastPlan>& planned,
                  Instant now, solver::Effort& effort) {
  return Asking(plan, job, planned, now, effort).result();
}

}  // namespace tackfree
