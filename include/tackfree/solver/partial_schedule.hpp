// Partial schedule: a schedule under way in brief: how far each chain is, and what is still open.
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
  friend auto operator<=>(const Cost&, const Cost&) = default;
};

/// A set of products, by bit.
using Products = std::uint32_t;
inline constexpr int no_product = -1;

/// By how many places ahead in the chain, less one.
using Ahead = std::array<Slot, longest_reach>;

/// An amount of the resource, held until a slot.
struct HeldAmount {
  Slot until = 0;
  std::int32_t amount = 0;
};
/// A chain holds the resource for so many activities at a time at most.
inline constexpr std::size_t most_held = 2;

/// All, what makes dust, coats.
inline constexpr std::size_t kinds_of_work = 3;
inline constexpr std::array<Slot, kinds_of_work> nothing_fits{-1, -1, -1};

struct PartialSchedule {
  std::array<std::uint8_t, most_chains> done{};  ///< links done, by chain
  std::array<Ahead, most_chains> ready{};        ///< the waits of the next links so far
  std::array<Ahead, most_chains> latest{};       ///< their limits so far; 0 is none
  std::array<std::array<HeldAmount, most_held>, most_chains> held{};
  std::array<Slot, most_chains> wet_until{};
  std::array<Slot, most_chains> settled{};  ///< when the dust of the chain's work has settled
  /// By crossing: when its wait is over; of no meaning before what it waits for has begun.
  std::array<Slot, most_crossings> crossed{};
  Slot free = 0;         ///< the worker, but for a clean-up that is due
  Slot met = 0;          ///< the goals so far
  int due = no_product;  ///< product just coated with, clean-up not done yet
  Products owed = 0;     ///< left open though other work came after: they must be used again
  Products open = 0;     ///< set up in this window and not cleaned up
  Products closed = 0;   ///< cleaned up in this window: not to be opened again
  Cost cost;
  std::uint32_t last_set = 0;  ///< the first one that is not refuted; see PartialBounds
  /// By kind of work: while no more hours than these have gone, the work left fits (PartialBounds).
  std::array<Slot, kinds_of_work> fits_until = nothing_fits;
  std::int32_t trace = -1;  ///< the activity added last, with its start and what came before
};

/// Products with set-up or clean-up of which coats are still to come.
inline Products prepared_to_come(const std::vector<Chain>& chains, const PartialSchedule& partial) {
  Products all = 0;
  for (std::size_t g = 0; g < chains.size(); ++g)
    if (partial.done[g] < chains[g].size()) all |= chains[g][partial.done[g]].prepared_from;
  return all;
}

}  // namespace tackfree::solver
