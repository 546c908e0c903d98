// Partial dominance: can one partial schedule do all that another can, nowhere later?
#pragma once

#include "tackfree/solver/partial_bounds.hpp"

#include <vector>

namespace tackfree::solver {

class PartialDominance {
 public:
  PartialDominance(const std::vector<Chain>& chains, const PartialBounds& bounds, bool costs_count)
      : chains_(chains), bounds_(bounds), costs_count_(costs_count) {}

  /// `a` and `b` have done the same work and have the same products open.
  bool as_good(const PartialSchedule& a, const PartialSchedule& b) const;
  /// `a` may be further in some chains; no window is open in either. Whatever `b` does from here on
  /// `a` can do too, leaving out what it has done already: drying never ends sooner for a later
  /// start, so what follows is ready no later than with `b`.
  bool as_good_and_further(const PartialSchedule& a, const PartialSchedule& b) const;

 private:
  bool crossings_as_good(const PartialSchedule& a, const PartialSchedule& b,
                         std::size_t chain) const;
  bool chain_as_good(const PartialSchedule& a, const PartialSchedule& b, std::size_t chain) const;
  bool further_as_good(const PartialSchedule& a, const PartialSchedule& b, std::size_t chain) const;
  bool effects_as_good(const PartialSchedule& a, const PartialSchedule& b, std::size_t chain) const;

  const std::vector<Chain>& chains_;
  const PartialBounds& bounds_;
  bool costs_count_;
};

/// Is each byte of `a` at least that of `b`? Bytes are below 128, so that eight are compared in one
/// subtraction.
constexpr bool is_further(std::uint64_t a, std::uint64_t b) {
  constexpr std::uint64_t high = 0x8080808080808080ULL;
  return (((a | high) - b) & high) == high;
}

}  // namespace tackfree::solver
