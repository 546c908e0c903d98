// Order timing: the earliest starts of activities that start in a given order, all rules kept.
#pragma once

#include "tackfree/solver/scheduling_problem.hpp"

#include <vector>

namespace tackfree::solver {

/// Once the order of starts is fixed, every rule says "start i is no sooner than something that
/// does not decrease when other starts increase": a lag is over, a start set opens, those before
/// it leave the worker, the space or the room free; a maximum lag says it backwards, the earlier
/// one starts no sooner than what still lets the later one come in time. Such rules have a least
/// solution, found by raising starts until nothing moves; no schedule of that order has any start
/// sooner (Knaster and Tarski's theorem on monotone maps).
class OrderTiming {
 public:
  explicit OrderTiming(const SchedulingProblem& problem);

  /// For problems whose products need no set-up and no clean-up.
  static bool can_time(const SchedulingProblem& problem);

  /// Raises `starts`, lower bounds by activity, to the least that keep all lags, all start sets
  /// and, for the activities of `order`, all rules of their order; those not in it start no sooner
  /// than the last of it. False when one would start after `latest`.
  bool raise(const std::vector<std::size_t>& order, const std::vector<Slot>& latest,
             std::vector<Slot>& starts) const;
  /// Lowers `latest` to what lets every goal be met by `target` and what follows start in time.
  void lower(Slot target, std::vector<Slot>& latest) const;

  /// End of an activity by its start, which is one it may have.
  Slot end(std::size_t activity, Slot start) const {
    return ends_[activity][static_cast<std::size_t>(start)];
  }
  /// When everything that an activity takes is given back and its dust and wetness are over.
  Slot over(std::size_t activity, Slot start) const;
  const std::vector<std::size_t>& lags_from(std::size_t activity) const {
    return lags_from_[activity];
  }

 private:
  bool raise_by_lags(const std::vector<Slot>& latest, std::vector<Slot>& starts, bool& moved) const;
  bool set(std::size_t activity, Slot at, const std::vector<Slot>& latest,
           std::vector<Slot>& starts, bool& moved) const;
  Slot free_after(const std::vector<std::size_t>& order, std::size_t position, Slot at,
                  const std::vector<Slot>& starts) const;
  Slot workers_free(const std::vector<std::size_t>& order, std::size_t position, Slot at,
                    const std::vector<Slot>& starts) const;
  Slot resources_free(const std::vector<std::size_t>& order, std::size_t position, Slot at,
                      const std::vector<Slot>& starts) const;

  const SchedulingProblem& problem_;
  std::vector<std::vector<Slot>> next_, last_, ends_;  ///< by activity and slot
  std::vector<std::vector<std::size_t>> lags_from_;
};

}  // namespace tackfree::solver
