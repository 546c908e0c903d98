#include "tackfree/solver/partial_dominance.hpp"

#include <algorithm>

namespace tackfree::solver {

namespace {

/// No later than `other`, or of no consequence because nothing starts before `from`.
bool no_later(Slot one, Slot other, Slot from) { return one <= other || one <= from; }

}  // namespace

bool PartialDominance::effects_as_good(const PartialSchedule& a, const PartialSchedule& b,
                                       std::size_t chain) const {
  if (!no_later(a.wet_until[chain], b.wet_until[chain], b.free) ||
      !no_later(a.settled[chain], b.settled[chain], b.free))
    return false;
  for (std::size_t i = 0; i < most_held; ++i) {
    const HeldAmount& held = a.held[chain][i];
    const HeldAmount& other = b.held[chain][i];
    if (held.until > b.free && (held.until > other.until || held.amount > other.amount))
      return false;
  }
  return true;
}

bool PartialDominance::chain_as_good(const PartialSchedule& a, const PartialSchedule& b,
                                     std::size_t chain) const {
  for (std::size_t i = 0; i < longest_reach; ++i) {
    if (!no_later(a.ready[chain][i], b.ready[chain][i], b.free)) return false;
    const Slot limit = a.latest[chain][i];
    if (limit > 0 && (b.latest[chain][i] == 0 || limit < b.latest[chain][i])) return false;
  }
  return true;
}

/// What `a` has begun of the chain lets others begin no later than with `b`, whether `b` has begun
/// it or has it still to do.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the better one and the worse
bool PartialDominance::crossings_as_good(const PartialSchedule& a, const PartialSchedule& b,
                                         std::size_t chain) const {
  for (const auto& [link, crossing] : bounds_.crossings_of(chain)) {
    if (a.done[chain] <= link || a.done[crossing.chain] > crossing.link) continue;
    const Slot ready = a.crossed[crossing.number];
    if (ready <= b.free) continue;
    if (b.done[chain] > link) {
      if (ready > b.crossed[crossing.number]) return false;
      continue;
    }
    std::vector<Slot> starts;
    bounds_.earliest_starts(b, chain, starts);
    if (starts[link] != never && ready > bounds_.crossed_after(chain, link, crossing, starts[link]))
      return false;
  }
  return true;
}

bool PartialDominance::as_good(const PartialSchedule& a, const PartialSchedule& b) const {
  if (a.free > b.free || (costs_count_ && a.cost > b.cost)) return false;
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    if (!effects_as_good(a, b, g) || !crossings_as_good(a, b, g)) return false;
    if (a.done[g] < chains_[g].size() && !chain_as_good(a, b, g)) return false;
  }
  return true;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the better one and the worse
bool PartialDominance::further_as_good(const PartialSchedule& a, const PartialSchedule& b,
                                       std::size_t chain) const {
  for (const Slot limit : a.latest[chain])
    if (limit > 0) return false;
  bool waits = false;
  for (const Slot ready : a.ready[chain]) waits = waits || ready > b.free;
  if (!waits) return true;
  std::vector<Slot> starts;
  bounds_.earliest_starts(b, chain, starts);
  for (std::size_t i = 0; i < longest_reach; ++i) {
    const std::size_t k = a.done[chain] + i;
    if (k < starts.size() && a.ready[chain][i] > starts[k]) return false;
  }
  return true;
}

bool PartialDominance::as_good_and_further(const PartialSchedule& a,
                                           const PartialSchedule& b) const {
  if (a.free > b.free || (costs_count_ && a.cost > b.cost)) return false;
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    if (!effects_as_good(a, b, g) || !crossings_as_good(a, b, g)) return false;
    if (a.done[g] == b.done[g] && a.done[g] < chains_[g].size() && !chain_as_good(a, b, g))
      return false;
  }
  const Products to_come = prepared_to_come(chains_, a);
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    for (std::size_t k = b.done[g]; k < a.done[g]; ++k)
      if ((chains_[g][k].prepared & to_come) != 0) return false;
    if (a.done[g] > b.done[g] && a.done[g] < chains_[g].size() && !further_as_good(a, b, g))
      return false;
  }
  return true;
}

}  // namespace tackfree::solver
