// Batch waits: what the next work on each batch waits for, until when and why.
#pragma once

#include "tackfree/air/drying.hpp"
#include "tackfree/plan/plan.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// Work that is next on a batch and what keeps it waiting longest: a coat's drying, the rule
/// between two classes, the repair of a fault, another batch that goes first, dust, or a date of
/// the person's. Hours of work, free hands and the air when it goes on are not among these.
struct BatchWait {
  std::size_t operation = 0;     ///< index into OperationList::operations: the work that waits
  std::optional<Instant> until;  ///< nothing: not within the plan; up to now: it may be done
  /// previous_step, drying, coats_a_day, dust or not_before.
  HeldBy by = HeldBy::drying;
  Wait wait;                    ///< what it waits for; of not_before nothing
  std::optional<double> share;  ///< of the drying that it asks for, 0 to 1; drying on a done coat
  bool failed = false;          ///< that coat failed a trial, and none was passed since

  bool is_over(Instant now) const { return until && *until <= now; }
};

/// One for each work that is next on a batch and waits, or has waited for a coat to dry, in the
/// order of the batches. A batch has more than one only where a repair and other work may be done
/// in any order. Work with no wait behind it is left out.
std::vector<BatchWait> batch_waits(const Plan& plan, const std::vector<DryingClock>& clocks);

}  // namespace tackfree
