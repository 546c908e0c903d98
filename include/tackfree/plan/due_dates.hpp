// Due dates: which batches are ready in time, how late the others are, what holds them.
#pragma once

#include "tackfree/plan/work_at_hand.hpp"

#include <algorithm>
#include <optional>
#include <vector>

namespace tackfree {

/// A batch that is wanted by some time.
struct DueDate {
  std::size_t batch = 0;
  Instant due;
  std::optional<Instant> ready;  ///< for light use; nothing: not within the plan
  /// When the last work on it is done, hardware and finishing touches too; nothing: some of it has
  /// no time.
  std::optional<Instant> done;
  /// The step of the schedule that holds it most: of the waits from the plan's begin to its last
  /// coat, the longest; nothing where the batch is in time.
  std::optional<std::size_t> longest_wait;

  bool ready_in_time() const { return ready && *ready <= due; }
  bool in_time() const { return ready_in_time() && done && *done <= due; }
  /// All that is to be done and to dry.
  std::optional<Instant> finished() const {
    return ready && done ? std::optional(std::max(*ready, *done)) : std::nullopt;
  }
  Minutes late_by() const { return finished() && !in_time() ? *finished() - due : Minutes(0); }
};

/// Every batch with a due date, in the order of the job. Of a batch in lots each lot.
std::vector<DueDate> due_dates(const DatedWork& work);

/// The job without the due dates that this plan of it misses.
Job without_missed_dates(const DatedWork& work);

/// A wait that ends with a step of the schedule.
struct DecidingWait {
  Minutes length{};
  std::size_t dated_step = 0;  ///< index into Schedule::steps
};

/// The steps that one after another decide when the batch is ready: each waited for the one before
/// it. In order of time; empty when it is not ready within the plan.
std::vector<std::size_t> deciding_steps(const DatedWork& work, std::size_t batch);

/// The waits before those steps, the longest first.
std::vector<DecidingWait> deciding_waits(const DatedWork& work, std::size_t batch);

/// The batch that is ready last and so decides when all is; nothing when a batch is not ready.
std::optional<std::size_t> last_batch(const DatedWork& work);

}  // namespace tackfree
