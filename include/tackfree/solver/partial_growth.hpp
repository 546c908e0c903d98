// Partial growth: one more activity added to a partial schedule, or its window closed.
#pragma once

#include "tackfree/solver/partial_bounds.hpp"

#include <vector>

namespace tackfree::solver {

/// What becomes of a clean-up that is due when other work is added: done now, or put off because
/// the product is used again in this window.
enum class Due { none, done_now, put_off, goes_on };

/// A partial schedule with the start of what was added.
struct Grown {
  PartialSchedule partial;
  Slot start = 0;
  bool too_much_held = false;  ///< the partial schedule cannot say what the chain holds
};

class PartialGrowth {
 public:
  /// See SearchAim for loose limits; `costs_count` when sessions and late work matter.
  PartialGrowth(const SchedulingProblem& problem, const std::vector<Chain>& chains,
                bool loose_limits, bool costs_count);

  /// The same steps for another aim.
  PartialGrowth with(bool loose_limits, bool costs_count, bool late_counts) const;

  /// The stretches from one window's begin to the next one's.
  std::size_t stages() const { return stage_begins_.size(); }
  Slot stage_end(std::size_t stage) const;

  /// Makes the clean-up that is due what `due` says.
  PartialSchedule with_due(const PartialSchedule& partial, Due due) const;
  /// When the chain's next link may start by what it waits for; never while a link of another chain
  /// that it waits for has not begun.
  Slot ready(const PartialSchedule& partial, std::size_t chain) const;
  /// The first start of the chain's next link at or after `from` in the stage that keeps all rules;
  /// never when there is none.
  Slot first_start(const PartialSchedule& partial, std::size_t chain, Slot from,
                   std::size_t stage) const;
  /// The partial schedule with the chain's next link begun at `start`.
  Grown add(const PartialSchedule& partial, std::size_t chain, Slot start, std::size_t stage) const;
  /// The partial schedule when the stage is over: nothing of it open, the worker free at the next
  /// one's begin.
  PartialSchedule close(const PartialSchedule& partial, std::size_t stage) const;
  /// Does the step leave everything as it would be without it, from the next stage on?
  bool is_harmless(const PartialSchedule& before, const Grown& after, std::size_t chain,
                   std::size_t stage) const;
  /// Does the dust of the one chain harm the other?

 private:
  void wait_for(PartialSchedule& next, const Link& link, std::size_t chain, Slot start, Slot end,
                std::size_t stage) const;
  bool hold(PartialSchedule& next, const Activity& activity, std::size_t chain, Run work) const;
  Slot when_resource_is_free(const PartialSchedule& partial, int amount, Slot at) const;
  Slot late(Run work) const;
  template <class Of>
  std::vector<Slot> last_starts(Of&& of) const;

  const SchedulingProblem& problem_;
  const std::vector<Chain>& chains_;
  bool loose_limits_;
  bool costs_count_;
  bool late_counts_ = true;
  std::vector<Slot> stage_begins_;
  std::vector<std::vector<bool>> disturbs_;
  std::vector<Slot> late_before_;  ///< by slot
  /// By slot: the last start at or before it of work that makes dust, that gets wet, that takes the
  /// resource; -1 when there is none.
  std::vector<Slot> last_dusty_, last_wet_, last_use_;
};

}  // namespace tackfree::solver
