#include "tackfree/solver/last_sets.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace tackfree::solver {

namespace {

/// Chains by bit.
using ChainSet = std::uint32_t;

bool holds(ChainSet set, std::size_t number) { return (set >> number & 1U) != 0; }

/// A chain's last work, if it may begin in the window.
struct LastWork {
  Slot latest_end;
  Slot duration;
  std::size_t chain;
};

/// In order of the latest end.
std::vector<LastWork> last_works(const SchedulingProblem& problem, const std::vector<Chain>& chains,
                                 const Deadlines& deadlines, Slot begin) {
  std::vector<LastWork> works;
  for (std::size_t g = 0; g < chains.size(); ++g)
    if (const Slot start = deadlines[g].back(); start >= begin)
      works.push_back({chains[g].back().end[index(start)],
                       problem.activities[chains[g].back().activity].duration, g});
  std::ranges::sort(works, {}, &LastWork::latest_end);
  return works;
}

/// The soonest due first, do all of them end in time, by hours from `begin` on?
bool fits(const std::vector<LastWork>& works, ChainSet set, const std::vector<Slot>& hours_before,
          Slot begin) {
  Slot until = hours_before[index(begin)];
  return std::ranges::all_of(works, [&](const LastWork& work) {
    if (!holds(set, work.chain)) return true;
    until += work.duration;
    return until <= hours_before[index(work.latest_end)];
  });
}

/// The sets that fit and are within no other.
std::vector<ChainSet> last_ones(const std::vector<LastWork>& works,
                                const std::vector<Slot>& hours_before, Slot begin) {
  ChainSet all = 0;
  for (const LastWork& work : works) all |= ChainSet{1} << work.chain;
  std::vector<ChainSet> largest;
  // Downwards, so that each set comes after those that hold it.
  for (ChainSet set = all;; set = (set - 1) & all) {
    const bool within =
        std::ranges::any_of(largest, [&](ChainSet other) { return (set & ~other) == 0; });
    if (!within && fits(works, set, hours_before, begin)) largest.push_back(set);
    if (set == 0) return largest;
  }
}

/// The chain ends before `begin`.
void end_before(const SchedulingProblem& problem, const Chain& chain, Slot begin,
                std::vector<Slot>& deadlines) {
  deadlines.back() = begin == 0 ? -1 : chain.back().last_start[index(begin - 1)];
  for (std::size_t k = chain.size() - 1; k-- > 0;) {
    const auto in_time = [&](Slot start) {
      return std::ranges::all_of(chain[k].waits, [&](const Link::Wait& wait) {
        return ready_after(problem, wait, chain[k].end[index(start)]) <= deadlines[k + wait.ahead];
      });
    };
    while (deadlines[k] >= 0 && !in_time(deadlines[k]))
      deadlines[k] = deadlines[k] == 0 ? -1 : chain[k].last_start[index(deadlines[k] - 1)];
  }
}

}  // namespace

Deadlines deadlines_for(const std::vector<Chain>& chains, Slot target) {
  Deadlines deadlines(chains.size());
  for (std::size_t g = 0; g < chains.size(); ++g)
    for (const Link& link : chains[g]) {
      const auto in_time = std::upper_bound(link.tail.begin(), link.tail.end(), target);
      const auto latest = static_cast<Slot>(in_time - link.tail.begin()) - 1;
      deadlines[g].push_back(latest < 0 ? -1 : link.last_start[index(latest)]);
    }
  return deadlines;
}

std::vector<Deadlines> deadlines_by_last_set(const SchedulingProblem& problem,
                                             const std::vector<Chain>& chains,
                                             const std::vector<Slot>& hours_before,
                                             const Deadlines& deadlines) {
  Slot last = -1;
  for (const std::vector<Slot>& of_chain : deadlines) last = std::max(last, of_chain.back());
  const auto window = last < 0 ? std::nullopt : window_at(problem, last);
  if (!window) return {deadlines};
  const Slot begin = problem.windows[*window].begin;
  const std::vector<LastWork> works = last_works(problem, chains, deadlines, begin);
  std::vector<Deadlines> by_last_set;
  for (const ChainSet late : last_ones(works, hours_before, begin)) {
    Deadlines& of_last_set = by_last_set.emplace_back(deadlines);
    for (const LastWork& work : works)
      if (!holds(late, work.chain))
        end_before(problem, chains[work.chain], begin, of_last_set[work.chain]);
  }
  return by_last_set;
}

}  // namespace tackfree::solver
