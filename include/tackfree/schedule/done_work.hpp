// Done work: when waits for a coat or for other work are over, planned or done already.
#pragma once

#include "tackfree/air/drying.hpp"
#include "tackfree/operations/operation_list.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// When a wait for work that ended at `end` is over, its delay not counted; nothing where a coat
/// does not dry so far within the series.
std::optional<Instant> wait_over(const Job& job, const OperationList& list,
                                 const std::vector<DryingClock>& clocks, const Wait& wait,
                                 Instant end);

/// When a done coat reaches a stage: by the clock from the hour it really was on, no sooner than a
/// failed trial allows. A thumb test that was passed counts for what recoating waits for, but never
/// under the label's own hours, unless the job is faster than the label.
std::optional<Instant> done_reaches(const Job& job, const Operation& coat, const DryingClock& clock,
                                    Stage stage, int films = 1);

/// When a wait for a done operation is over, its delay counted. What was skipped is not waited for.
std::optional<Instant> done_wait_over(const Job& job, const OperationList& list,
                                      const std::vector<DryingClock>& clocks, const Wait& wait);

/// Done work that keeps dust and wet coats apart, and until when; nothing where that is not within
/// the series.
struct DustKept {
  std::size_t operation = 0;  ///< a coat on which dust would fall, or sanding whose dust settles
  std::optional<Instant> until;
};

/// What keeps `work`, a sanding or a coat, waiting for dust: none is made on coats of its room that
/// are still wet, and what was made there settles before a coat.
std::vector<DustKept> kept_by_dust(const Job& job, const OperationList& list,
                                   const std::vector<DryingClock>& clocks, const Operation& work);

/// Space in a drying room that a batch lies in with a coat that is on, until it can be handled;
/// nothing in `until` where that is not within the series. In the unit of `space_taken`.
struct SpaceHeld {
  std::size_t batch = 0;
  double space = 0;
  std::optional<Instant> until;
};

/// One for each batch with a done coat in a room of limited space: the last of its coats counts.
std::vector<SpaceHeld> space_held(const Job& job, const OperationList& list,
                                  const std::vector<DryingClock>& clocks);

}  // namespace tackfree
