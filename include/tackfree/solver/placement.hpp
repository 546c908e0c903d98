// Placement: the state of a schedule being built, and the earliest place of one more activity.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <optional>
#include <vector>

namespace tackfree::solver {

/// Activities placed so far. `earliest` looks, `place` commits.
class Placement {
 public:
  explicit Placement(const SchedulingProblem& problem);

  /// True when every activity that `activity` lags behind has been placed or given up.
  bool is_eligible(std::size_t activity) const;
  /// The earliest pieces from `not_before` on, given what is placed; no pieces, and the binding
  /// rule as last hold, when there is none within the horizon.
  SolvedActivity earliest(std::size_t index, Slot not_before = 0) const;
  void place(std::size_t activity, SolvedActivity found);
  const Solution& solution() const { return solution_; }

 private:
  struct Busy {
    Run run;
    std::optional<std::size_t> session;  ///< set for a session's set-up and clean-ups
  };
  struct Taken {
    Run run;
    std::size_t activity = 0;
  };
  struct Held {
    Run run;
    int amount = 0;
  };
  /// Why a start at some slot fails, and the next slot worth trying.
  struct Conflict {
    Hold::By by;
    Slot next;
    std::size_t which = 0;  ///< of the resource or maximum lag
  };

  bool start_after_lags(std::size_t index, Slot& at, SolvedActivity& found) const;
  std::optional<Conflict> conflict_of(std::size_t index, const std::vector<Run>& pieces) const;
  std::optional<Conflict> worker_conflict(Run whole, std::optional<std::size_t> session) const;
  std::optional<Conflict> session_conflict(const Activity& activity, Slot at) const;
  void append_uses(std::size_t session, std::vector<Run>& uses) const;
  std::optional<Conflict> dust_conflict(const Activity& activity, Run work) const;
  std::optional<Conflict> resource_conflict(const Activity& activity, Run work) const;
  std::optional<Conflict> maximum_lag_conflict(std::size_t index, Run work) const;
  std::optional<std::size_t> session_in(std::size_t product, std::size_t window) const;
  void join_session(std::size_t activity);
  void hold_by_rules(const OpenTime& time, Run closed_run, SolvedActivity& found) const;

  const SchedulingProblem& problem_;
  std::vector<std::vector<std::size_t>> lags_to_;
  std::vector<std::vector<std::size_t>> maximum_lags_of_;  ///< from or to the activity
  std::vector<bool> done_;                                 ///< placed or given up
  Solution solution_;
  std::vector<Busy> busy_;
  std::vector<Taken> dusty_;
  std::vector<Taken> wet_;
  std::vector<std::vector<Held>> held_;  ///< by resource
};

}  // namespace tackfree::solver
