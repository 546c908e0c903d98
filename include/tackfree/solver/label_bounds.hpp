// Label bounds: can a partial schedule still be ready by a target, with so many sessions?
#pragma once

#include "tackfree/solver/label.hpp"

#include <vector>

namespace tackfree::solver {

/// Deadlines of all links for a target, and tests that refute partial schedules. Each test is a
/// necessary condition, so that what fails has no schedule.
class LabelBounds {
 public:
  LabelBounds(const SchedulingProblem& problem, const std::vector<Chain>& chains, Slot target);

  /// The latest start of a link; before 0 when none is ready by the target.
  Slot deadline(std::size_t chain, std::size_t link) const { return deadlines_[chain][link]; }
  /// The next links of all chains can start in time, and the work left fits in the hours left.
  bool may_meet_deadlines(const Label& label) const;
  /// The same with the slots at which links become ready, and the resource over windows; for a
  /// label with nothing begun in a window that starts when it is free.
  bool may_meet_deadlines_with_waits(const Label& label) const;
  /// A lower bound on the sessions still to come.
  std::int32_t sessions_to_come(const Label& label) const;
  /// Smaller is more promising.
  double urgency(const Label& label) const;
  /// The earliest start of each link that is left, by its own chain's waits.
  void earliest_starts(const Label& label, std::size_t chain, std::vector<Slot>& starts) const;

 private:
  /// Work of one kind in order of deadline, and the hours in which that kind can be done.
  struct Item {
    std::size_t chain, link;
    Slot duration;
    Slot latest_end;
  };
  struct Kind {
    std::vector<Item> items;
    std::vector<Slot> hours_before;  ///< by slot
  };
  /// Activities that hold at least `amount`: so many lanes, each with one activity after another.
  struct Lanes {
    int amount = 1;
    bool by_amount = false;   ///< every unit is a lane, and an activity takes its amount of them
    std::vector<Item> items;  ///< in order of latest start; `duration` is what it takes
    std::vector<Slot> next;   ///< by slot: the next start in the lane after one at that slot
    std::vector<Slot> first;  ///< by slot: the first start at or after it
  };

  void add_kind(const std::vector<Item>& items);
  void add_lanes(int amount, bool by_amount);
  void count_sessions();
  bool lanes_suffice(const Lanes& lanes, const Label& label) const;
  bool work_fits(const Kind& kind, const Label& label) const;
  bool work_fits_with_waits(const Label& label) const;

  const SchedulingProblem& problem_;
  const std::vector<Chain>& chains_;
  std::vector<std::vector<Slot>> deadlines_;
  std::vector<Kind> kinds_;  ///< the first is all work
  std::vector<Lanes> lanes_;
  /// By chain, link and product: windows that its coats from there on need at least.
  std::vector<std::vector<std::vector<std::int32_t>>> sessions_left_;
};

}  // namespace tackfree::solver
