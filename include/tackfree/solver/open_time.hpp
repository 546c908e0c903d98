// Open time: the slots at which something may happen, and the rule that closes each other slot.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace tackfree::solver {

/// A step of the planning grid, counted from the plan's now.
using Slot = std::int32_t;

inline std::size_t index(Slot slot) { return static_cast<std::size_t>(slot); }
/// Not within the horizon.
inline constexpr Slot never = std::numeric_limits<Slot>::max();

/// A rule, as a small number that means nothing to the solver. 0 is "open".
using Rule = std::uint8_t;
inline constexpr Rule no_rule = 0;

/// For each slot of the horizon: open, or the rule that closes it.
class OpenTime {
 public:
  OpenTime() = default;
  explicit OpenTime(std::vector<Rule> closed_by);

  Slot horizon() const { return static_cast<Slot>(closed_by_.size()); }
  bool is_open(Slot at) const { return at >= 0 && at < horizon() && rule(at) == no_rule; }
  /// The rule at a slot inside the horizon.
  Rule rule(Slot at) const { return closed_by_[static_cast<std::size_t>(at)]; }
  /// The same up to a slot, where the horizon then ends.
  OpenTime until(Slot horizon) const;
  /// The first open slot at or after `from`, or never.
  Slot next_open(Slot from) const;
  /// The first slot at or after `from` that is not open; `from` itself when it is closed.
  Slot open_until(Slot from) const;
  /// The first slot after `at`, of the horizon, that another rule closes, or none; or the horizon.
  Slot same_rule_until(Slot at) const;
  /// By slot of the horizon.
  const std::vector<Rule>& rules() const { return closed_by_; }

 private:
  std::size_t stretch_from(Slot at) const;

  std::vector<Rule> closed_by_;
  std::vector<Slot> opens_, closes_;  ///< of each open stretch, in order
  std::vector<Slot> changes_;         ///< where another rule begins, and the horizon
};

}  // namespace tackfree::solver
