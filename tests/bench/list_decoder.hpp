// List decoder: activities taken from a list one by one, each put where it fits first; made fast.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace tackfree::solver {

/// The starts of all activities and when the last goal is met.
struct Timed {
  std::vector<Slot> starts;
  Slot ready = 0;
};

/// For problems whose products need no set-up and no clean-up, with all workers always there. The
/// same rules as in Placement, kept in arrays by slot instead of lists, and without reasons.
class ListDecoder {
 public:
  explicit ListDecoder(const SchedulingProblem& problem);

  static bool can_decode(const SchedulingProblem& problem);

  /// Nothing when an activity finds no place. `list` names each activity once, after the ones it
  /// lags behind. What comes too late for a maximum lag puts off what the lag counts from, and all
  /// is decoded again, `repairs` times at most.
  std::optional<Timed> decode(const std::vector<std::size_t>& list, std::size_t repairs = 0);
  /// Activities tried so far.
  std::int64_t steps() const { return steps_; }

 private:
  using Family = std::int32_t;

  void clear();
  bool place(std::size_t activity);
  Slot conflict(std::size_t activity, Slot start, Slot end);
  Slot room_conflict(std::size_t activity, Slot start, Slot end) const;
  Slot limit_conflict(std::size_t activity, Slot start, Slot end);
  void take(std::size_t activity, Slot start, Slot end);
  static void mark(std::vector<Family>& slots, Run run, Family family);
  Family family_of(std::size_t activity) const;

  const SchedulingProblem& problem_;
  std::vector<std::vector<std::size_t>> lags_to_, limits_of_;
  std::vector<Slot> not_before_, starts_, ends_;
  std::vector<std::int16_t> busy_;
  std::vector<std::vector<std::int32_t>> used_;   ///< by resource and slot
  std::vector<std::vector<Family>> wet_, dusty_;  ///< by room and slot
  std::optional<std::size_t> broken_limit_;
  Slot broken_at_ = 0;
  std::int64_t steps_ = 0;
};

/// When the last goal is met, for activities that end so.
Slot ready_of(const SchedulingProblem& problem, const std::vector<Slot>& ends);

/// Starts as a solution with its sessions, without reasons.
Solution solution_from(const SchedulingProblem& problem, const std::vector<Slot>& starts);

}  // namespace tackfree::solver
