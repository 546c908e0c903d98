#include "tackfree/plan/moves.hpp"

#include <map>
#include <string_view>

namespace tackfree {

std::vector<Move> moves(const DatedWork& work) {
  std::vector<Move> all;
  if (!work.job.last_plan) return all;
  std::map<std::string_view, const LastStep*> before;
  for (const LastStep& step : work.job.last_plan->steps) before[step.key] = &step;
  for (std::size_t i = 0; i < work.schedule.steps.size(); ++i) {
    const DatedStep& step = work.schedule.steps[i];
    const Operation& op = work.list.operations.at(step.operation);
    const auto found = before.find(op.key);
    const LastStep* last = found == before.end() ? nullptr : found->second;
    if (found != before.end()) before.erase(found);
    if (op.done && (!op.done->logged || (last != nullptr && last->done))) continue;
    if (last != nullptr && !op.done && last->time.begin == step.begin()) continue;
    if (last != nullptr && op.done &&
        std::chrono::abs(last->time.begin - step.begin()) <= work.job.grid)
      continue;
    Move move{.dated_step = i, .to = step.begin()};
    if (last != nullptr) move.from = last->time.begin;
    all.push_back(std::move(move));
  }
  for (const LastStep& step : work.job.last_plan->steps)
    if (before.contains(step.key) && !step.done)
      all.push_back({.title = step.title, .from = step.time.begin});
  return all;
}

void keep_last_starts(OperationList& list, const LastPlan& last) {
  std::map<std::string_view, Instant> starts;
  for (const LastStep& step : last.steps)
    if (!step.done) starts[step.key] = step.time.begin;
  for (Operation& op : list.operations)
    if (const auto found = starts.find(op.key); found != starts.end() && !op.done)
      op.starts_last = found->second;
}

}  // namespace tackfree
