#include "tackfree/schedule/missed_windows.hpp"

#include "tackfree/air/recoat_window.hpp"

#include <map>
#include <utility>

namespace tackfree {

namespace {

bool can_be_sanded(const Coating& coating) {
  return coating.grits.after_first || coating.grits.between || coating.grits.before_last;
}

}  // namespace

KeyedCoats missed_windows(const Job& job, const OperationList& list, const AirSeries& air,
                          const Schedule& schedule) {
  KeyedCoats missed;
  std::map<std::size_t, std::map<Side, const DatedStep*>> unsanded;  // by batch
  for (const DatedStep& step : schedule.steps) {
    const Operation& op = list.operations.at(step.operation);
    if (op.grit) unsanded.erase(op.batch);
    if (!op.coating || op.skipped()) continue;
    const DatedStep* below = std::exchange(unsanded[op.batch][op.side], &step);
    if (below == nullptr || op.done) continue;  // what is on is on
    const Coating& under = job.coatings.at(*list.operations.at(below->operation).coating);
    const auto until = recoat_unsanded_until(under, air, below->dries_from.value_or(below->end()));
    if (until && step.begin() > *until && can_be_sanded(under))
      missed.insert({op.batch, op.step, op.coat});
  }
  return missed;
}

}  // namespace tackfree
