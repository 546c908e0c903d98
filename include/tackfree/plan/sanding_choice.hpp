// Sanding choice: coats that miss the window of the one below are sanded for, or put on in time.
#pragma once

#include "tackfree/air/drying.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace tackfree {

/// What dating takes besides the work.
struct Dating {
  const std::vector<DryingClock>& clocks;
  Interval span;
  std::size_t most_sessions;
  solver::Effort* effort = nullptr;
};

/// The better of these by when it is ready, then by sessions, then by coats sanded for: `sanded`,
/// where every coat that missed its window is sanded for, and any mixture of sanding for some of
/// them and holding others to their windows. `relaxed` is dated as if no window ever shut, so none
/// is better than that. A fixed number of mixtures is tried; where it suffices and each is proved,
/// the answer is proved best.
std::optional<DatedWork> best_by_sanding(const DatedWork& relaxed, std::optional<DatedWork> sanded,
                                         const Dating& how);

/// Gives coats that go on unsanded the hours to spare before the window below shuts that the job
/// wants, as far as the plan is ready on the same day in no more sessions: all of them, or else one
/// after the other, the one with least to spare first.
void leave_room(DatedWork& work, const Dating& how);

}  // namespace tackfree
