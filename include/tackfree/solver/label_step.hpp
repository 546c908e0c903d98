// Label step: one more activity added to a partial schedule, or its window closed.
#pragma once

#include "tackfree/solver/label_bounds.hpp"

#include <vector>

namespace tackfree::solver {

/// What becomes of a clean-up that is due when other work is added: done now, or put off because
/// the product is used again in this window.
enum class Due { none, done_now, put_off, goes_on };

/// A label with the start of what was added.
struct Stepped {
  Label label;
  Slot start = 0;
  bool too_much_held = false;  ///< the label cannot say what the chain holds
};

class LabelStep {
 public:
  /// See SearchAim for loose limits; `costs_count` when sessions and late work matter.
  LabelStep(const SchedulingProblem& problem, const std::vector<Chain>& chains, bool loose_limits,
            bool costs_count);

  /// The same steps for another aim.
  LabelStep with(bool loose_limits, bool costs_count, bool late_counts) const;

  /// The stretches from one window's begin to the next one's.
  std::size_t stages() const { return stage_begins_.size(); }
  Slot stage_end(std::size_t stage) const;

  /// Makes the clean-up that is due what `due` says.
  Label with_due(const Label& label, Due due) const;
  /// When the chain's next link may start by what it waits for; never while a link of another chain
  /// that it waits for has not begun.
  Slot ready(const Label& label, std::size_t chain) const;
  /// The first start of the chain's next link at or after `from` in the stage that keeps all rules;
  /// never when there is none.
  Slot first_start(const Label& label, std::size_t chain, Slot from, std::size_t stage) const;
  /// The label with the chain's next link begun at `start`.
  Stepped add(const Label& label, std::size_t chain, Slot start, std::size_t stage) const;
  /// The label when the stage is over: nothing of it open, the worker free at the next one's begin.
  Label close(const Label& label, std::size_t stage) const;
  /// Does the step leave everything as it would be without it, from the next stage on?
  bool is_harmless(const Label& before, const Stepped& after, std::size_t chain,
                   std::size_t stage) const;
  /// Does the dust of the one chain harm the other?

 private:
  void wait_for(Label& next, const Link& link, std::size_t chain, Slot start, Slot end,
                std::size_t stage) const;
  bool hold(Label& next, const Activity& activity, std::size_t chain, Run work) const;
  Slot when_resource_is_free(const Label& label, int amount, Slot at) const;
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
