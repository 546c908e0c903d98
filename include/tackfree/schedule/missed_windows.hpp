// Missed windows: coats that come too late to hold on the one below unless it is sanded.
#pragma once

#include "tackfree/air/air_series.hpp"
#include "tackfree/operations/operation_list.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

/// Rule 2: coats of the schedule that go on past the window of an unsanded one of the same side,
/// and that sanding would let hold; the window ends by the warmest hour since. The plan is then
/// made once more with sanding before them, which waits until the coat below is dry to sand.
KeyedCoats missed_windows(const Job& job, const OperationList& list, const AirSeries& air,
                          const Schedule& schedule);

/// A coat that goes on unsanded over another one of its side, while that one still takes it.
struct RecoatSlack {
  std::size_t dated_step = 0;  ///< index into Schedule::steps, of the upper coat
  Instant until;               ///< the end of the window of the coat below
};

/// Every coat of the schedule that a window for recoating unsanded limits, with its slack.
std::vector<RecoatSlack> recoat_slacks(const Job& job, const OperationList& list,
                                       const AirSeries& air, const Schedule& schedule);

}  // namespace tackfree
