// Partial bounds: can a partial schedule still be ready by a target, with so many sessions?
#pragma once

#include "tackfree/solver/last_sets.hpp"
#include "tackfree/solver/partial_schedule.hpp"

#include <memory>
#include <utility>
#include <vector>

namespace tackfree::solver {

/// What the bounds for all targets share: hours of work, the pace of the resource, sessions.
struct BoundTables {
  struct Item {
    std::size_t chain, link;
    Slot takes;  ///< slots of work, or lanes
  };
  /// Work of one kind, and the hours in which that kind can be done.
  struct Kind {
    std::vector<Item> items;
    std::vector<Slot> hours_before;  ///< by slot
  };
  /// Activities that come one after another in so many lanes.
  struct Lanes {
    std::int64_t width = 1;
    std::vector<Item> items;
    std::vector<Slot> next;   ///< by slot: the next start in the lane after one at that slot
    std::vector<Slot> first;  ///< by slot: the first start at or after it
  };

  BoundTables(const SchedulingProblem& problem, const std::vector<Chain>& chains);

  const SchedulingProblem& problem;
  const std::vector<Chain>& chains;
  std::vector<Kind> kinds;  ///< the first is all work
  std::vector<Lanes> lanes;
  /// By chain: its links that links of other chains wait for.
  std::vector<std::vector<std::pair<std::size_t, Link::Crossing>>> crossings;
  /// By chain, link and product: windows that its coats from there on need at least.
  std::vector<std::vector<std::vector<std::int32_t>>> sessions_left;

 private:
  void add_kind(const std::vector<Item>& items);
  void add_lanes(Lanes lanes, const std::vector<Slot>& released);
  void add_space_lanes(int amount, bool by_amount);
  void count_sessions();
};

/// Deadlines of all links for a target, and tests that refute partial schedules. Each test is a
/// necessary condition, so that what fails has no schedule.
///
/// Not all chains can do their last work in the last window before the target: it has too few
/// hours. Which of them do is a choice, and for each choice the others have sooner deadlines. Of
/// these last sets a partial schedule carries the first that is not refuted: what refutes one for a
/// partial schedule refutes it for all that grow from it.
class PartialBounds {
 public:
  PartialBounds(const SchedulingProblem& problem, const std::vector<Chain>& chains, Slot target);
  PartialBounds(std::shared_ptr<const BoundTables> tables, Slot target);

  /// The latest start of a link with any last set; before 0 when none is ready by the target.
  Slot deadline(std::size_t chain, std::size_t link) const { return deadlines_[chain][link]; }
  /// Leaves the partial schedule's last sets in which the link cannot start then; false when that
  /// is all.
  bool may_start(PartialSchedule& partial, std::size_t chain, std::size_t link, Slot start) const;
  /// The next links of all chains can start in time, and the work left fits in the hours left, with
  /// some last set: the partial schedule is given the first.
  bool may_meet_deadlines(PartialSchedule& partial) const;
  /// The same with the slots at which links become ready, and the resource over windows; for a
  /// partial schedule with nothing begun in a window that starts when it is free.
  bool may_meet_deadlines_with_waits(PartialSchedule& partial) const;
  /// A lower bound on the sessions still to come.
  std::int32_t sessions_to_come(const PartialSchedule& partial) const;
  /// Smaller is more promising.
  double urgency(const PartialSchedule& partial) const;
  /// The links of a chain that links of others wait for, with what waits.
  const std::vector<std::pair<std::size_t, Link::Crossing>>& crossings_of(std::size_t chain) const {
    return tables_->crossings[chain];
  }
  Slot crossed_after(std::size_t chain, std::size_t link, const Link::Crossing& crossing,
                     Slot start) const;
  /// The earliest start of each link that is left, by its own chain's waits.
  void earliest_starts(const PartialSchedule& partial, std::size_t chain,
                       std::vector<Slot>& starts) const;

 private:
  using Item = BoundTables::Item;
  struct Due {
    std::uint8_t chain, link;
    Slot takes;
    Slot latest;        ///< end of work, start of what holds the resource
    Slot hours_before;  ///< hours of that kind of work before it
  };
  /// In order of the latest.
  using InOrder = std::vector<Due>;
  struct LastSet {
    Deadlines deadlines;
    std::vector<InOrder> work;   ///< by kind
    std::vector<InOrder> lanes;  ///< by lanes
  };

  void add_last_set(Deadlines deadlines);
  /// Goes on to the next last set; false when there is none.
  bool next_last_set(PartialSchedule& partial) const;
  InOrder in_order(const Deadlines& deadlines, const std::vector<Item>& items,
                   const std::vector<Slot>* hours_before) const;
  bool meets_deadlines(const LastSet& last_set, PartialSchedule& partial) const;
  bool meets_deadlines_with_waits(const LastSet& last_set, PartialSchedule& partial) const;
  bool lanes_suffice(const LastSet& last_set, std::size_t number,
                     const PartialSchedule& partial) const;
  bool work_fits(const LastSet& last_set, std::size_t kind, PartialSchedule& partial) const;
  bool work_fits_with_waits(const LastSet& last_set, const PartialSchedule& partial) const;

  std::shared_ptr<const BoundTables> tables_;
  const SchedulingProblem& problem_;
  const std::vector<Chain>& chains_;
  Deadlines deadlines_;
  std::vector<LastSet> last_sets_;
  // What a test works in, kept from partial schedule to partial schedule; so the tests of one
  // object are for one thread.
  struct Job {
    Slot ready, due, work;  ///< in hours of work
  };
  mutable std::vector<Job> jobs_, waiting_;
  mutable std::vector<std::vector<Slot>> starts_;
};

}  // namespace tackfree::solver
