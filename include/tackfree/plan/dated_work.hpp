// Dated work: the operations dated within every recoat window.
#pragma once

#include "tackfree/air/drying.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/solver/proof_search.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace tackfree {

/// What all searches of one run may do together: two seconds or so of a slow machine.
inline constexpr std::int64_t most_effort = 16'000'000;
/// What the plans after the first one of a run may do together at the least, whatever that left.
inline constexpr std::int64_t least_effort = most_effort / 8;

/// What is left of a run's effort for the plans after its first one.
solver::Effort effort_after(const solver::Effort& first);

/// The operations dated; where a coat misses the window of the one below, once more with sanding
/// before it (rule 2). What the searches do is taken off `effort`.
DatedWork date_work(WorkAtHand work, const std::vector<DryingClock>& clocks, Interval span,
                    solver::Effort* effort = nullptr);

/// The answer to whether the work can be dated in so few sessions.
struct InSessions {
  std::optional<DatedWork> work;
  bool proved_none = false;  ///< it cannot
};

/// The same in `most_sessions` or fewer, ready as soon as that allows.
InSessions date_work_in_sessions(WorkAtHand work, const std::vector<DryingClock>& clocks,
                                 Interval span, std::size_t most_sessions,
                                 solver::Effort* effort = nullptr);

}  // namespace tackfree
