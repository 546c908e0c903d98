#include "tackfree/plan/due_dates.hpp"

#include <algorithm>
#include <functional>

namespace tackfree {

namespace {

std::optional<std::size_t> step_with(const Schedule& schedule, std::size_t operation) {
  for (std::size_t i = 0; i < schedule.steps.size(); ++i)
    if (schedule.steps[i].operation == operation) return i;
  return std::nullopt;
}

/// When the batch is ready for light use.
std::optional<Instant> ready_of(const DatedWork& work, std::size_t batch) {
  for (const DatedOutcome& outcome : work.schedule.outcomes)
    if (outcome.batch == batch && outcome.stage == Stage::light_use) return outcome.at;
  return std::nullopt;
}

/// When the last work on the batch is done; nothing where some has no time.
std::optional<Instant> done_of(const DatedWork& work, std::size_t batch) {
  const auto is_of_batch = [&](std::size_t operation) {
    return work.list.operations.at(operation).batch == batch;
  };
  for (const Unplaced& unplaced : work.schedule.unplaced)
    if (is_of_batch(unplaced.operation)) return std::nullopt;
  Instant last = work.schedule.span.begin;
  for (const DatedStep& step : work.schedule.steps)
    if (is_of_batch(step.operation)) last = std::max(last, step.end());
  return last;
}

/// The last coat whose light use comes last.
std::optional<std::size_t> last_coat(const DatedWork& work, std::size_t batch) {
  std::optional<std::size_t> last;
  const auto& steps = work.schedule.steps;
  const auto light = [&](std::size_t i) { return steps[i].reaches[index_of(Stage::light_use)]; };
  for (const Outcome& outcome : work.list.outcomes) {
    if (outcome.batch != batch || outcome.stage != Stage::light_use) continue;
    for (const std::size_t coat : outcome.coats) {
      const auto step = step_with(work.schedule, coat);
      if (step && (!last || light(*last) < light(*step))) last = step;
    }
  }
  return last;
}

/// The step that `step` waited for last: the one its reason names, else the one that ended last of
/// those it has to come after.
std::optional<std::size_t> waited_for(const DatedWork& work, std::size_t step) {
  const DatedStep& own = work.schedule.steps[step];
  // clang 14 cannot read the standard library's reversed view.
  // NOLINTNEXTLINE(modernize-loop-convert)
  for (auto held = own.held.rbegin(); held != own.held.rend(); ++held)
    if (held->operation) return step_with(work.schedule, *held->operation);
  std::optional<std::size_t> last;
  const Operation& op = work.list.operations.at(own.operation);
  for (const Wait& wait : op.waits)
    if (const auto before = step_with(work.schedule, wait.operation))
      if (!last || work.schedule.steps[*last].end() < work.schedule.steps[*before].end())
        last = before;
  return last;
}

}  // namespace

std::vector<std::size_t> deciding_steps(const DatedWork& work, std::size_t batch) {
  std::vector<std::size_t> steps;
  if (!ready_of(work, batch)) return steps;
  for (auto step = last_coat(work, batch); step && steps.size() <= work.schedule.steps.size();
       step = waited_for(work, *step))
    steps.push_back(*step);
  std::reverse(steps.begin(), steps.end());
  return steps;
}

std::vector<DecidingWait> deciding_waits(const DatedWork& work, std::size_t batch) {
  std::vector<DecidingWait> waits;
  Instant before = work.schedule.span.begin;
  for (const std::size_t i : deciding_steps(work, batch)) {
    const DatedStep& step = work.schedule.steps[i];
    if (step.begin() > before) waits.push_back({step.begin() - before, i});
    before = std::max(before, step.end());
  }
  std::ranges::stable_sort(waits, std::ranges::greater{}, &DecidingWait::length);
  return waits;
}

std::optional<std::size_t> last_batch(const DatedWork& work) {
  if (!work.schedule.ready_at) return std::nullopt;
  std::optional<std::size_t> last;
  for (std::size_t batch = 0; batch < work.job.batches.size(); ++batch)
    if (ready_of(work, batch) == work.schedule.ready_at) last = batch;
  return last;
}

Job without_missed_dates(const DatedWork& work) {
  Job job = work.job;
  for (const DueDate& date : due_dates(work))
    if (!date.ready_in_time()) job.batches[date.batch].rules.ready_by.reset();
  return job;
}

std::vector<DueDate> due_dates(const DatedWork& work) {
  std::vector<DueDate> dates;
  for (std::size_t batch = 0; batch < work.job.batches.size(); ++batch) {
    const auto due = work.job.batches[batch].rules.ready_by;
    if (!due) continue;
    DueDate date{.batch = batch,
                 .due = *due,
                 .ready = ready_of(work, batch),
                 .done = done_of(work, batch),
                 .longest_wait = {}};
    const std::vector<DecidingWait> waits = deciding_waits(work, batch);
    if (!date.in_time() && !waits.empty()) date.longest_wait = waits.front().dated_step;
    dates.push_back(date);
  }
  return dates;
}

}  // namespace tackfree
