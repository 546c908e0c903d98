#include "tackfree/plan/dry_coats.hpp"

#include <algorithm>

namespace tackfree {

namespace {

/// When the wait of `step` is over by drying alone; nothing where that is not within the plan.
std::optional<Instant> dry_at(const Plan& plan, const DatedStep& step, const Wait& wait) {
  // Coats that dry as one, and hours at the label's conditions: the schedule reckoned them.
  const auto held = std::ranges::find_if(step.held, [&](const Held& each) {
    return each.by == HeldBy::drying && each.operation == wait.operation &&
           each.stage == wait.stage;
  });
  if (held != step.held.end()) return held->until;
  if (!wait.stage || wait.films > 1) return std::nullopt;
  const auto coat = std::ranges::find(plan.schedule.steps, wait.operation, &DatedStep::operation);
  return coat == plan.schedule.steps.end() ? std::nullopt : coat->reaches.at(index_of(*wait.stage));
}

}  // namespace

std::vector<DryCoat> dry_coats(const Plan& plan, const WorkSession& session) {
  std::vector<DryCoat> coats;
  for (const WorkTask& task : session.tasks)
    for (const std::size_t index : task.steps) {
      const DatedStep& step = plan.schedule.steps.at(index);
      const Operation& work = plan.list.operations.at(step.operation);
      if (work.done) continue;
      for (const Wait& wait : work.waits) {
        if (!wait.stage && !wait.dry_for) continue;
        const auto at = dry_at(plan, step, wait);
        if (!at) continue;
        const auto known = std::ranges::find(coats, wait.operation, &DryCoat::coat);
        if (known == coats.end())
          coats.push_back({wait.operation, wait.stage, *at});
        else if (known->at < *at)
          *known = {wait.operation, wait.stage, *at};
      }
    }
  return coats;
}

}  // namespace tackfree
