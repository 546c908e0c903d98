#include "tackfree/plan/listed_work.hpp"

#include "tackfree/logged/coat_trials.hpp"
#include "tackfree/operations/coats_below.hpp"
#include "tackfree/operations/repairs.hpp"
#include "tackfree/plan/early_coats.hpp"
#include "tackfree/plan/moves.hpp"
#include "tackfree/schedule/plan_size.hpp"

#include <algorithm>

namespace tackfree {

namespace {

Temperature warmest_air(const AirSeries& air, Instant from) {
  Temperature warmest = air.at(from).temperature;
  for (const AirNode& node : air.nodes())
    if (node.at >= from) warmest = std::max(warmest, node.state.temperature);
  return warmest;
}

void hold_to_windows(OperationList& list, const std::map<CoatPlace, Duration>& in_window) {
  for (Operation& op : list.operations) {
    const auto found = in_window.find(place_of(op));
    if (op.coating && found != in_window.end()) op.window_to_spare = found->second;
  }
}

}  // namespace

// A job whose list ends early has to be refused.
static_assert(most_listed > most_steps);

OperationList listed_work(const WorkAtHand& work) {
  OperationList list = with_repairs(operation_list(work.job, work.takeoff, work.volumes, work.keyed,
                                                   warmest_air(work.air, work.now)),
                                    work.job, work.keyed);
  mark_done(list, work.facts);
  wait_for_coats_below(list, work.job);
  mark_early_coats(list, work.early);
  mark_trials(list, work.job, work.air);
  if (work.job.last_plan) keep_last_starts(list, *work.job.last_plan);
  hold_to_windows(list, work.in_window);
  return list;
}

}  // namespace tackfree
