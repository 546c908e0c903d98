// Label: a partial schedule in brief: how far each chain is, when all is free, what is still open.
#pragma once

#include "tackfree/solver/chains.hpp"

#include <array>
#include <compare>
#include <cstdint>

namespace tackfree::solver {

/// What is counted besides being ready early; less is better, compared in this order.
struct Cost {
  std::int32_t sessions = 0;
  std::int32_t late = 0;
  std::int64_t sum_of_starts = 0;
  friend auto operator<=>(const Cost&, const Cost&) = default;
};

/// A set of products, by bit.
using Products = std::uint32_t;
inline constexpr int no_product = -1;

struct Label {
  std::array<std::uint8_t, most_chains> done{};  ///< links done, by chain
  std::array<std::array<Slot, longest_reach>, most_chains>
      ends{};  ///< of the last links done, latest first
  std::array<Slot, most_chains> wet_until{};
  Slot free = 0;  ///< the worker, but for a clean-up that is due
  Slot dust_settled = 0;
  Slot met = 0;              ///< the goals so far
  std::int32_t window = -1;  ///< of the last work
  int due = no_product;      ///< product just coated with, clean-up not done yet
  Products owed = 0;         ///< left open though other work came after: they must be used again
  Products closed = 0;       ///< cleaned up in this window: not to be opened again
  Cost cost;
  std::int32_t parent = -1;
  std::size_t activity = 0;  ///< that was added last
  Slot start = 0;            ///< of it
};

}  // namespace tackfree::solver
