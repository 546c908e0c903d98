#include "tackfree/plan/log_facts.hpp"

#include "tackfree/air/dried_share.hpp"
#include "tackfree/base/name.hpp"
#include "tackfree/learning/slowness.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

bool is_of_work(LogKind kind) {
  return kind == LogKind::coat || kind == LogKind::done || kind == LogKind::skipped;
}

/// The work with what is exactly before and after it, as one stretch.
struct Stretch {
  std::size_t first, last;
};

Stretch stretch_of(const OperationList& list, std::size_t operation) {
  Stretch stretch{operation, operation};
  while (list.operations[stretch.first].right_after) --stretch.first;
  while (stretch.last + 1 < list.operations.size() && list.operations[stretch.last + 1].right_after)
    ++stretch.last;
  return stretch;
}

/// Goes through the lines and marks operations.
class Marking {
 public:
  Marking(OperationList& list, const Job& job, Instant now)
      : list_(list), job_(job), now_(now), line_of_(list.operations.size()) {
    for (std::size_t i = 0; i < list.operations.size(); ++i) place_[list.operations[i].key] = i;
  }

  std::vector<LeftOutLine> mark() {
    for (const LogEntry& entry : job_.history.entries) {
      if (entry.at > now_) {
        report(entry, "at", iso_local(entry.at, job_.calendar.zone),
               fmt::format("wanted a time up to now, {}", iso_local(now_, job_.calendar.zone)),
               "plan as of a later time: --now");
        continue;
      }
      if (!entry.step.empty()) mark(entry);
      if (!entry.coating.empty()) know(entry);
    }
    for (std::size_t i = 0; i < list_.operations.size(); ++i)
      if (list_.operations[i].done) begin_after_what_came_before(i);
    for (std::size_t i = list_.operations.size(); i-- > 0;)
      if (list_.operations[i].done) mark_what_came_before(i);
    check_order();
    pass_over_skipped();
    std::vector<LeftOutLine> misfits;
    for (auto& [line, misfit] : misfits_) misfits.push_back(std::move(misfit));
    return misfits;
  }

 private:
  void report(const LogEntry& entry, std::string key, std::string found, std::string wanted,
              std::string hint = {}) {
    LeftOutLine& misfit = misfits_[entry.line];
    misfit.line = entry.line;
    misfit.id = entry.id;
    misfit.why.push_back({.file = job_.history.file,
                          .line = entry.line,
                          .key = std::move(key),
                          .found = std::move(found),
                          .wanted = std::move(wanted),
                          .hint = std::move(hint)});
  }

  void know(const LogEntry& entry) {
    if (find_named(job_.coatings, entry.coating) != nullptr) return;
    std::vector<std::string> names;
    for (const Coating& coating : job_.coatings) names.push_back(coating.name);
    report(entry, "coating", entry.coating, "wanted a coating of the job",
           name_hint(entry.coating, names));
  }

  void unknown(const LogEntry& entry) {
    std::vector<std::string> keys;
    for (const Operation& op : list_.operations) keys.push_back(op.key);
    const auto near = nearest_name(entry.step, keys);
    report(entry, "step", entry.step, "wanted a step of the job's plan",
           near ? fmt::format("did you mean \"{}\"?", *near) : "");
  }

  void mark(const LogEntry& entry) {
    const auto found = place_.find(entry.step);
    if (found == place_.end()) return unknown(entry);
    Operation& op = list_.operations[found->second];
    const bool is_coat = op.kind == OperationKind::coat;
    if (entry.kind != LogKind::done && entry.kind != LogKind::skipped && !is_coat)
      return report(entry, "step", entry.step, "wanted the step of a coat");
    if (entry.kind == LogKind::done && is_coat)
      return report(entry, "kind", "done", "wanted \"coat\" for a coat");
    if (!is_of_work(entry.kind)) return;
    if (const LogEntry* other = line_of_[found->second])
      return report(entry, "step", entry.step,
                    fmt::format("wanted a step that is not done yet; line {} has it", other->line),
                    fmt::format("to correct that line, add \"corrects\": {}", other->id));
    line_of_[found->second] = &entry;
    const bool skipped = entry.kind == LogKind::skipped;
    const Minutes length = skipped ? Minutes(0) : whole_minutes_up(op.work);
    const Instant began = skipped ? entry.at : entry.began_at.value_or(entry.at - length);
    // What goes with a coat is done when the coat is.
    const bool alone = !op.right_after && stretch_of(list_, found->second).last == found->second;
    if (!is_coat && !alone) return;
    if (op.kind == OperationKind::dust_off || op.kind == OperationKind::wipe_off) return;
    op.done = Done{.time = {began, entry.at}, .skipped = skipped, .insisted = entry.insisted};
  }

  void mark_unlogged(std::size_t operation, Instant at) {
    auto& done = list_.operations[operation].done;
    if (!done) done = Done{.time = {at, at}, .logged = false};
  }

  /// Who was quicker than usual had not begun before what is below was done.
  void begin_after_what_came_before(std::size_t index) {
    Interval& time = list_.operations[index].done->time;
    for (std::size_t i = stretch_of(list_, index).first; i <= index; ++i)
      for (const Wait& wait : list_.operations[i].waits) {
        const Operation& before = list_.operations[wait.operation];
        if (before.batch == list_.operations[index].batch && before.done &&
            before.done->time.end <= time.end)
          time.begin = std::max(time.begin, before.done->time.end);
      }
  }

  void mark_what_came_before(std::size_t index) {
    const Interval time = list_.operations[index].done->time;
    const Stretch stretch = stretch_of(list_, index);
    for (std::size_t i = stretch.first; i < index; ++i) mark_unlogged(i, time.begin);
    for (std::size_t i = index + 1; i <= stretch.last; ++i) mark_unlogged(i, time.end);
    for (std::size_t i = stretch.first; i <= index; ++i)
      for (const Wait& wait : list_.operations[i].waits)
        if (list_.operations[wait.operation].batch == list_.operations[index].batch)
          mark_unlogged(wait.operation, time.begin);
  }

  void check_order() {
    for (std::size_t i = 0; i < list_.operations.size(); ++i) {
      const LogEntry* entry = line_of_[i];
      if (entry == nullptr || !list_.operations[i].done) continue;
      for (const LogEntry* before : logged_before(i))
        if (before->at > entry->at)
          report(*entry, "at", iso_local(entry->at, job_.calendar.zone),
                 fmt::format("wanted a time after that of line {}, which comes before it",
                             before->line));
    }
  }

  /// The lines of what the operation waits for; where there is none, of what that waits for in its
  /// batch, for it was done in time.
  std::vector<const LogEntry*> logged_before(std::size_t operation) const {
    std::vector<const LogEntry*> lines;
    std::vector<std::size_t> open{operation};
    std::set<std::size_t> seen;
    for (std::size_t next = 0; next < open.size(); ++next)
      for (const Wait& wait : list_.operations[open[next]].waits) {
        const std::size_t before = wait.operation;
        if (!seen.insert(before).second) continue;
        if (line_of_[before] != nullptr)
          lines.push_back(line_of_[before]);
        else if (list_.operations[before].batch == list_.operations[operation].batch)
          open.push_back(before);
      }
    return lines;
  }

  /// The coat that a skipped one would have gone on; nothing where that is the bare wood.
  std::optional<std::size_t> lies_below(std::size_t skipped) const {
    int washed_off = 0;
    for (std::size_t below = skipped; below-- > 0;) {
      const Operation& op = list_.operations[below];
      if (op.batch != list_.operations[skipped].batch || op.side != list_.operations[skipped].side)
        continue;
      if (op.skipped()) continue;
      if (op.takes_off) ++washed_off;
      if (op.coating && washed_off-- <= 0) return below;
    }
    return std::nullopt;
  }

  /// What would have waited for a skipped coat waits for the one below it: by the same stage, or as
  /// long as a pair of classes asks where the one below is of the same.
  void pass_over_skipped() {
    const auto& operations = list_.operations;
    for (Operation& op : list_.operations)
      for (Wait& wait : op.waits) {
        const Operation& before = operations[wait.operation];
        if (!before.coating || !before.skipped()) continue;
        const auto below = lies_below(wait.operation);
        if (below && (wait.stage || (wait.dry_for && operations[*below].step == before.step)))
          wait.operation = *below;
      }
    for (Outcome& outcome : list_.outcomes)
      for (std::size_t& coat : outcome.coats)
        if (operations[coat].skipped()) coat = lies_below(coat).value_or(coat);
  }

  OperationList& list_;
  const Job& job_;
  Instant now_;
  std::map<int, LeftOutLine> misfits_;    ///< by line
  std::vector<const LogEntry*> line_of_;  ///< by operation
  std::map<std::string, std::size_t, std::less<>> place_;
};

/// The coat on its way to the stage that was tried.
DryingCoat drying_coat(const Job& job, const Operation& op, Stage stage) {
  return {&job.coatings.at(*op.coating), stage, op.film_for(stage), op.done->dries_from()};
}

/// A coat that is still tacky has failed under the thumb.
DryTest tried_by(const LogEntry& entry) { return entry.test.value_or(DryTest::thumb); }

bool is_on(const Operation* op) {
  return op != nullptr && op->coating && op->done && !op->skipped();
}

/// The trials of each coat, in order of time.
std::map<const Operation*, std::vector<const LogEntry*>> trials(const Job& job,
                                                                const OperationList& list) {
  std::map<const Operation*, std::vector<const LogEntry*>> all;
  for (const LogEntry& entry : job.history.entries) {
    if (!entry.test && entry.fault != Fault::tacky) continue;
    const Operation* op = operation_called(list, entry.step);
    if (is_on(op) && entry.at > op->done->time.end) all[op].push_back(&entry);
  }
  for (auto& [op, entries] : all)
    std::stable_sort(entries.begin(), entries.end(),
                     [](const LogEntry* a, const LogEntry* b) { return a->at < b->at; });
  return all;
}

CoatTried tried_coat(const Job& job, const Operation& op, const AirSeries& air,
                     const std::vector<const LogEntry*>& entries) {
  CoatTried result{.coating = job.coatings.at(*op.coating).name};
  for (const LogEntry* entry : entries) {
    const Stage stage = tried_stage(job.coatings.at(*op.coating), tried_by(*entry));
    const auto share = dried_share(drying_coat(job, op, stage), air, job.room.air_speed, entry->at);
    if (!share || *share <= 0) continue;
    result.entry = entry->id;
    result.insisted = result.insisted || entry->insisted;
    if (!entry->passed)
      result.failed_at = std::max(result.failed_at.value_or(0), *share);
    else if (!result.passed_at)
      result.passed_at = share;
  }
  return result;
}

}  // namespace

std::vector<AirReading> readings_in_log(const History& history) {
  std::vector<AirReading> readings;
  for (const LogEntry& entry : history.entries)
    if (entry.temperature) readings.push_back({entry.at, *entry.temperature, entry.humidity});
  return readings;
}

std::optional<Instant> first_coat_at(const History& history) {
  std::optional<Instant> first;
  for (const LogEntry& entry : history.entries)
    if (entry.kind == LogKind::coat) first = std::min(first.value_or(entry.at), entry.at);
  return first;
}

const Operation* operation_called(const OperationList& list, std::string_view key) {
  const auto found = std::ranges::find(list.operations, key, &Operation::key);
  return found == list.operations.end() ? nullptr : &*found;
}

namespace {

/// `sand-p240-again` is before a coat that is put on once more, `sand-p240-again-2` before the
/// next.
int times_again(const std::string& key) {
  constexpr std::string_view word = "-again";
  const std::size_t found = key.rfind(word);
  if (found == std::string::npos) return 0;
  return std::max(1, std::atoi(key.c_str() + std::min(key.size(), found + word.size() + 1)));
}

}  // namespace

KeyedCoats sanded_by_log(const Job& job) {
  KeyedCoats sanded;
  for (const LogEntry& entry : job.history.entries) {
    if (entry.kind != LogKind::done || entry.step.find("/sand-p") == std::string::npos) continue;
    for (std::size_t batch = 0; batch < job.batches.size(); ++batch) {
      const FinishSystem* system = find_named(job.systems, job.batches[batch].system);
      if (system == nullptr) continue;
      for (std::size_t step = 0; step < system->steps.size(); ++step) {
        const std::string head = fmt::format("{}/{}/coat-", slug(job.batches[batch].name),
                                             slug(system->steps[step].name));
        if (!entry.step.starts_with(head)) continue;
        const int coat = std::atoi(entry.step.c_str() + head.size());
        if (coat > 0) sanded.insert({batch, step, coat, times_again(entry.step)});
      }
    }
  }
  return sanded;
}

std::vector<LeftOutLine> mark_done(OperationList& list, const Job& job, Instant now) {
  return Marking(list, job, now).mark();
}

Stage tried_stage(const Coating& coating, DryTest test) {
  if (test == DryTest::touch) return Stage::touch;
  for (const Stage stage :
       {coating.needs_sanding_between ? Stage::sand : Stage::recoat, Stage::recoat, Stage::handle})
    if (coating.label_after.at(index_of(stage))) return stage;
  return Stage::handle;
}

void note_lessons(Job& job, const OperationList& list, const AirSeries& air) {
  job.history.coats.clear();
  job.history.tried.clear();
  for (const LogEntry& entry : job.history.entries) {
    const Operation* op = entry.amount ? operation_called(list, entry.step) : nullptr;
    if (is_on(op))
      job.history.coats.push_back({job.coatings.at(*op->coating).name, entry.at, op->mixed,
                                   *entry.amount, entry.insisted, entry.id});
  }
  // What was put on before its time dries like no other coat, so it teaches nothing.
  for (const auto& [op, entries] : trials(job, list))
    if (!op->done->insisted) job.history.tried.push_back(tried_coat(job, *op, air, entries));
  // By pointer they stand in no order that a person could name.
  std::ranges::sort(job.history.tried, {}, &CoatTried::entry);
}

void mark_trials(OperationList& list, const Job& job, const AirSeries& air) {
  const auto all = trials(job, list);
  for (Operation& op : list.operations) {
    const auto found = all.find(&op);
    if (found == all.end()) continue;
    for (const LogEntry* entry : found->second) {
      const Coating& coating = job.coatings.at(*op.coating);
      const Stage stage = tried_stage(coating, tried_by(*entry));
      if (entry->passed) {
        op.done->not_dry_before.reset();
        if (tried_by(*entry) == DryTest::thumb && !op.done->dry_since)
          op.done->dry_since = entry->at;
        continue;
      }
      const DryingCoat drying = drying_coat(job, op, stage);
      const auto had = dried_share(drying, air, job.room.air_speed, entry->at);
      if (!had || *had <= 0) continue;
      const double need = expected_need(coating, coating.slowness, *had);
      op.done->dry_since.reset();
      op.done->not_dry_to = stage == Stage::touch ? Stage::touch : Stage::handle;
      op.done->not_dry_before =
          share_reached(drying, air, job.room.air_speed, need).value_or(air.covers().end);
    }
  }
}

}  // namespace tackfree
