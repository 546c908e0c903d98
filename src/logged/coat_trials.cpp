#include "tackfree/logged/coat_trials.hpp"

#include "tackfree/air/dried_share.hpp"
#include "tackfree/learning/slowness.hpp"
#include "tackfree/logged/log_facts.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <vector>

namespace tackfree {

namespace {

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

Stage tried_stage(const Coating& coating, DryTest test) {
  if (test == DryTest::touch) return Stage::touch;
  for (const Stage stage :
       {coating.needs_sanding_between ? Stage::sand : Stage::recoat, Stage::recoat, Stage::handle})
    if (coating.label_after.at(index_of(stage))) return stage;
  return Stage::handle;
}

Lessons lessons_of(const Job& job, const OperationList& list, const AirSeries& air) {
  Lessons lessons;
  for (const LogEntry& entry : job.history.entries) {
    const Operation* op = entry.amount ? operation_called(list, entry.step) : nullptr;
    if (is_on(op))
      lessons.coats.push_back({job.coatings.at(*op->coating).name, entry.at, op->mixed,
                               *entry.amount, entry.insisted, entry.id});
  }
  // What was put on before its time dries like no other coat, so it teaches nothing.
  for (const auto& [op, entries] : trials(job, list))
    if (!op->done->insisted) lessons.tried.push_back(tried_coat(job, *op, air, entries));
  // By pointer they stand in no order that a person could name.
  std::ranges::sort(lessons.tried, {}, &CoatTried::entry);
  return lessons;
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
