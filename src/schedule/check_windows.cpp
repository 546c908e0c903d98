#include "tackfree/schedule/check_windows.hpp"

#include "tackfree/air/recoat_window.hpp"
#include "tackfree/operations/sanding.hpp"

#include <map>
#include <utility>

namespace tackfree {

namespace {

/// The end of the coat, or of wiping it off right after.
Instant on_at(const OperationList& list, const Schedule& schedule, const DatedStep& coat) {
  const std::size_t next = coat.operation + 1;
  if (list.operations[coat.operation].done || next >= list.operations.size() ||
      list.operations[next].kind != OperationKind::wipe_off)
    return coat.end();
  for (const DatedStep& step : schedule.steps)
    if (step.operation == next) return step.end();
  return coat.end();
}

bool sands_all(const Operation& op, const std::pair<std::size_t, Side>& where) {
  return op.grit && !op.spots && where.first == op.batch &&
         (op.side == Side::both || op.side == where.second);
}

}  // namespace

std::vector<std::string> broken_windows(const Job& job, const OperationList& list,
                                        const Schedule& schedule) {
  std::vector<std::string> broken;
  std::map<std::pair<std::size_t, Side>, std::vector<const DatedStep*>> unsanded;
  for (const DatedStep& step : schedule.steps) {
    const Operation& op = list.operations[step.operation];
    for (auto& [where, coats] : unsanded)
      if (sands_all(op, where)) coats.clear();
    auto& here = unsanded[{op.batch, op.side}];
    if (op.takes_off && !op.skipped() && !here.empty()) here.pop_back();
    if (!op.coating || op.skipped()) continue;
    const DatedStep* below = here.empty() ? nullptr : here.back();
    here.push_back(&step);
    if (below == nullptr || op.done) continue;
    const Coating& under = job.coatings[*list.operations[below->operation].coating];
    if (!under.recoat_unsanded_within || !key_grit(under)) continue;
    const Minutes spare = whole_minutes_up(op.window_to_spare.value_or(Duration()));
    const Minutes since = step.begin() - on_at(list, schedule, *below);
    if (!takes_unsanded(since + spare, under.recoat_unsanded_within->value))
      broken.push_back(op.key + " comes past the window of the coat below and is not sanded for");
  }
  return broken;
}

}  // namespace tackfree
