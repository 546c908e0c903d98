#include "tackfree/schedule/missed_windows.hpp"

#include "tackfree/air/recoat_window.hpp"
#include "tackfree/operations/sanding.hpp"
#include "tackfree/operations/unsanded_coats.hpp"

namespace tackfree {

namespace {

/// Calls `found(upper step, lower coat's coating, window's end)` for each coat over an unsanded
/// one.
template <class Found>
void each_over_unsanded(const Job& job, const OperationList& list, const AirSeries& air,
                        const Schedule& schedule, Found found) {
  UnsandedCoats<const DatedStep*> unsanded;
  for (std::size_t i = 0; i < schedule.steps.size(); ++i) {
    const DatedStep& step = schedule.steps[i];
    const Operation& op = list.operations.at(step.operation);
    const auto over = unsanded.pass(op, &step);
    if (!over || op.done) continue;  // what is on is on
    const DatedStep& below = **over;
    const Coating& under = job.coatings.at(*list.operations.at(below.operation).coating);
    const auto until = recoat_unsanded_until(under, air, below.dries_from.value_or(below.end()));
    if (until) found(i, under, *until);
  }
}

}  // namespace

KeyedCoats missed_windows(const Job& job, const OperationList& list, const AirSeries& air,
                          const Schedule& schedule) {
  KeyedCoats missed;
  each_over_unsanded(job, list, air, schedule,
                     [&](std::size_t step, const Coating& under, Instant until) {
                       const DatedStep& upper = schedule.steps[step];
                       const Operation& op = list.operations.at(upper.operation);
                       if (upper.begin() > until && key_grit(under)) missed.insert(place_of(op));
                     });
  return missed;
}

std::vector<RecoatSlack> recoat_slacks(const Job& job, const OperationList& list,
                                       const AirSeries& air, const Schedule& schedule) {
  std::vector<RecoatSlack> slacks;
  each_over_unsanded(job, list, air, schedule,
                     [&](std::size_t step, const Coating&, Instant until) {
                       if (schedule.steps[step].begin() <= until) slacks.push_back({step, until});
                     });
  return slacks;
}

}  // namespace tackfree
