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
std::optional<Instant> ready_of(const Plan& plan, std::size_t batch) {
  for (const DatedOutcome& outcome : plan.schedule.outcomes)
    if (outcome.batch == batch && outcome.stage == Stage::light_use) return outcome.at;
  return std::nullopt;
}

/// The last coat whose light use comes last.
std::optional<std::size_t> last_coat(const Plan& plan, std::size_t batch) {
  std::optional<std::size_t> last;
  const auto& steps = plan.schedule.steps;
  const auto light = [&](std::size_t i) { return steps[i].reaches[index_of(Stage::light_use)]; };
  for (const Outcome& outcome : plan.list.outcomes) {
    if (outcome.batch != batch || outcome.stage != Stage::light_use) continue;
    for (const std::size_t coat : outcome.coats) {
      const auto step = step_with(plan.schedule, coat);
      if (step && (!last || light(*last) < light(*step))) last = step;
    }
  }
  return last;
}

/// The step that `step` waited for last: the one its reason names, else the one that ended last of
/// those it has to come after.
std::optional<std::size_t> waited_for(const Plan& plan, std::size_t step) {
  const DatedStep& own = plan.schedule.steps[step];
  // clang 14 cannot read the standard library's reversed view.
  // NOLINTNEXTLINE(modernize-loop-convert)
  for (auto held = own.held.rbegin(); held != own.held.rend(); ++held)
    if (held->operation) return step_with(plan.schedule, *held->operation);
  std::optional<std::size_t> last;
  const Operation& op = plan.list.operations.at(own.operation);
  for (const Wait& wait : op.waits)
    if (const auto before = step_with(plan.schedule, wait.operation))
      if (!last || plan.schedule.steps[*last].end() < plan.schedule.steps[*before].end())
        last = before;
  return last;
}

}  // namespace

std::vector<std::size_t> deciding_steps(const Plan& plan, std::size_t batch) {
  std::vector<std::size_t> steps;
  if (!ready_of(plan, batch)) return steps;
  for (auto step = last_coat(plan, batch); step && steps.size() <= plan.schedule.steps.size();
       step = waited_for(plan, *step))
    steps.push_back(*step);
  std::reverse(steps.begin(), steps.end());
  return steps;
}

std::vector<DecidingWait> deciding_waits(const Plan& plan, std::size_t batch) {
  std::vector<DecidingWait> waits;
  Instant before = plan.schedule.span.begin;
  for (const std::size_t i : deciding_steps(plan, batch)) {
    const DatedStep& step = plan.schedule.steps[i];
    if (step.begin() > before) waits.push_back({step.begin() - before, i});
    before = std::max(before, step.end());
  }
  std::ranges::stable_sort(waits, std::ranges::greater{}, &DecidingWait::length);
  return waits;
}

std::optional<std::size_t> last_batch(const Plan& plan) {
  if (!plan.schedule.ready_at) return std::nullopt;
  std::optional<std::size_t> last;
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch)
    if (ready_of(plan, batch) == plan.schedule.ready_at) last = batch;
  return last;
}

Job without_missed_dates(const Plan& plan) {
  Job job = plan.job;
  for (const DueDate& date : due_dates(plan))
    if (!date.in_time()) job.batches[date.batch].rules.ready_by.reset();
  return job;
}

std::vector<DueDate> due_dates(const Plan& plan) {
  std::vector<DueDate> dates;
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch) {
    const auto due = plan.job.batches[batch].rules.ready_by;
    if (!due) continue;
    DueDate date{.batch = batch, .due = *due, .ready = ready_of(plan, batch), .longest_wait = {}};
    const std::vector<DecidingWait> waits = deciding_waits(plan, batch);
    if (!date.in_time() && !waits.empty()) date.longest_wait = waits.front().dated_step;
    dates.push_back(date);
  }
  return dates;
}

}  // namespace tackfree
