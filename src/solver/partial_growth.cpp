#include "tackfree/solver/partial_growth.hpp"

#include <algorithm>

namespace tackfree::solver {

namespace {

Products bit(std::size_t product) { return Products{1} << product; }
Products bit(int product) { return Products{1} << product; }

/// The soonest slot that forbids the same starts as `until` does: partial schedules that differ in
/// nothing but an hour at night are then the same.
Slot forbidding_the_same(const std::vector<Slot>& last_start, Slot until) {
  if (until <= 0 || until == never) return until;
  return last_start[std::min(index(until - 1), last_start.size() - 1)] + 1;
}

const Activity* first_of(const SchedulingProblem& problem, const Chain& chain, bool dusty) {
  for (const Link& link : chain) {
    const Activity& activity = problem.activities[link.activity];
    if (dusty ? activity.dusty : activity.wet_until.has_value()) return &activity;
  }
  return nullptr;
}

}  // namespace

PartialGrowth::PartialGrowth(const SchedulingProblem& problem, const std::vector<Chain>& chains,
                             bool loose_limits, bool costs_count)
    : problem_(problem), chains_(chains), loose_limits_(loose_limits), costs_count_(costs_count) {
  for (const Run window : problem.windows)
    stage_begins_.push_back(stage_begins_.empty() ? 0 : window.begin);
  if (stage_begins_.empty()) stage_begins_.push_back(0);
  for (const Chain& dusty : chains) {
    std::vector<bool>& row = disturbs_.emplace_back();
    for (const Chain& wet : chains) {
      const Activity* a = first_of(problem, dusty, true);
      const Activity* b = first_of(problem, wet, false);
      row.push_back(a != nullptr && b != nullptr && solver::disturbs(*a, *b));
    }
  }
  last_dusty_ = last_starts([](const Activity& a) { return a.dusty; });
  last_wet_ = last_starts([](const Activity& a) { return a.wet_until.has_value(); });
  last_use_ = last_starts([](const Activity& a) { return !a.uses.empty(); });
  late_before_.assign(index(problem.horizon) + 1, 0);
  for (const Run run : problem.late)
    for (Slot s = std::max(run.begin, Slot{0}); s < std::min(run.end, problem.horizon); ++s)
      late_before_[index(s) + 1] = 1;
  for (std::size_t s = 1; s < late_before_.size(); ++s) late_before_[s] += late_before_[s - 1];
}

PartialGrowth PartialGrowth::with(bool loose_limits, bool costs_count, bool late_counts) const {
  PartialGrowth other = *this;
  other.loose_limits_ = loose_limits;
  other.costs_count_ = costs_count;
  other.late_counts_ = late_counts;
  return other;
}

template <class Of>
std::vector<Slot> PartialGrowth::last_starts(Of&& of) const {
  std::vector<Slot> last(index(problem_.horizon) + 1, -1);
  for (const Chain& chain : chains_)
    for (const Link& link : chain)
      if (of(problem_.activities[link.activity]))
        for (Slot s = link.next_start[0]; s != never; s = link.next_start[index(s) + 1])
          last[index(s)] = s;
  for (std::size_t s = 1; s < last.size(); ++s) last[s] = std::max(last[s], last[s - 1]);
  return last;
}

Slot PartialGrowth::late(Run work) const {
  if (!late_counts_) return 0;
  return late_before_[index(std::clamp(work.end, Slot{0}, problem_.horizon))] -
         late_before_[index(std::clamp(work.begin, Slot{0}, problem_.horizon))];
}

Slot PartialGrowth::stage_end(std::size_t stage) const {
  return stage + 1 < stage_begins_.size() ? stage_begins_[stage + 1] : problem_.horizon;
}

PartialSchedule PartialGrowth::with_due(const PartialSchedule& partial, Due due) const {
  PartialSchedule base = partial;
  if (due == Due::done_now) {
    const Slot clean_up = problem_.products[static_cast<std::size_t>(base.due)].clean_up;
    base.cost.late += late({base.free, base.free + clean_up});
    base.free += clean_up;
    base.closed |= bit(base.due);
    base.open &= ~bit(base.due);
  }
  if (due == Due::put_off) base.owed |= bit(base.due);
  if (due != Due::goes_on) base.due = no_product;
  return base;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): an amount and a slot
Slot PartialGrowth::when_resource_is_free(const PartialSchedule& partial, int amount,
                                          Slot at) const {
  const int capacity = problem_.resources.front();
  if (amount > capacity) return never;
  while (true) {
    int used = amount;
    Slot next = never;
    for (const Standing& held : problem_.standing)
      if (held.until > at) {
        used += held.amount;
        next = std::min(next, held.until);
      }
    for (std::size_t g = 0; g < chains_.size(); ++g)
      for (const HeldAmount& held : partial.held[g])
        if (held.until > at) {
          used += held.amount;
          next = std::min(next, held.until);
        }
    if (used <= capacity) return at;
    if (next == never) return never;
    at = next;
  }
}

Slot PartialGrowth::ready(const PartialSchedule& partial, std::size_t chain) const {
  Slot at = partial.ready[chain][0];
  for (const Link::Crossing& crossing : chains_[chain][partial.done[chain]].begins_after) {
    if (partial.done[crossing.chain] <= crossing.link) return never;
    at = std::max(at, partial.crossed[crossing.number]);
  }
  return at;
}

Slot PartialGrowth::first_start(const PartialSchedule& partial, std::size_t chain, Slot from,
                                std::size_t stage) const {
  const Link& link = chains_[chain][partial.done[chain]];
  const Activity& activity = problem_.activities[link.activity];
  const Slot end = stage_end(stage);
  for (std::size_t h = 0; h < chains_.size(); ++h) {
    if (activity.dusty && disturbs_[chain][h]) from = std::max(from, partial.wet_until[h]);
    if (activity.wet_until && disturbs_[h][chain]) from = std::max(from, partial.settled[h]);
  }
  if (activity.product) {
    if ((partial.closed & bit(*activity.product)) != 0) return never;
    if ((partial.open & bit(*activity.product)) == 0)
      from = std::max(from, std::max(partial.free, problem_.windows[stage].begin) +
                                problem_.products[*activity.product].set_up);
  }
  while (from < end) {
    const Slot start = link.next_start[index(from)];
    if (start >= end) return never;
    if (activity.uses.empty()) return start;
    from = when_resource_is_free(partial, activity.uses.front().amount, start);
    if (from == start) return start;
  }
  return never;
}

bool PartialGrowth::hold(PartialSchedule& next, const Activity& activity, std::size_t chain,
                         Run work) const {
  if (activity.uses.empty()) return true;
  const Run run = held(problem_, activity.uses.front(), work);
  for (HeldAmount& held : next.held[chain])
    if (held.until <= work.begin) {
      held = {forbidding_the_same(last_use_, run.end), activity.uses.front().amount};
      return true;
    }
  return false;
}

void PartialGrowth::wait_for(PartialSchedule& next, const Link& link, std::size_t chain, Slot start,
                             Slot end, std::size_t stage) const {
  for (Ahead* ahead : {&next.ready[chain], &next.latest[chain]}) {
    std::copy(ahead->begin() + 1, ahead->end(), ahead->begin());
    ahead->back() = 0;
  }
  for (const Link::Wait& wait : link.waits) {
    Slot& ready = next.ready[chain][wait.ahead - 1];
    const std::size_t k = std::size_t{next.done[chain]} + wait.ahead;
    ready = std::max(
        ready, forbidding_the_same(chains_[chain][k].last_start, ready_after(problem_, wait, end)));
  }
  for (const Link::Crossing& crossing : link.lets_begin)
    next.crossed[crossing.number] = forbidding_the_same(
        chains_[crossing.chain][crossing.link].last_start, ready_after(problem_, crossing, end));
  for (const Link::Wait& limit : link.limits) {
    const Slot last = loose_limits_ ? link.last_start[index(stage_end(stage) - 1)] : start;
    const Slot within = ready_after(problem_, limit, link.end[index(std::max(last, start))]);
    if (within == never) continue;
    Slot& latest = next.latest[chain][limit.ahead - 1];
    // 0 stands for no limit; what must start before 1 after other work cannot.
    latest = std::max(Slot{1}, latest > 0 ? std::min(latest, within) : within);
  }
}

Grown PartialGrowth::add(const PartialSchedule& partial, std::size_t chain, Slot start,
                         std::size_t stage) const {
  const Link& link = chains_[chain][partial.done[chain]];
  const Activity& activity = problem_.activities[link.activity];
  Grown result{.partial = partial, .start = start};
  PartialSchedule& next = result.partial;
  const Slot end = link.end[index(start)];
  wait_for(next, link, chain, start, end, stage);
  ++next.done[chain];
  next.free = end;
  if (activity.splittable)
    for (const Run piece : pieces_from(problem_, activity, start)) next.cost.late += late(piece);
  else
    next.cost.late += late({start, end});
  for (const std::size_t goal : link.goals)
    next.met = std::max(next.met, problem_.tables[goal][index(end)]);
  if (activity.dusty)
    next.settled[chain] = forbidding_the_same(last_wet_, end + problem_.dust_settles);
  if (activity.wet_until)
    next.wet_until[chain] = std::max(
        next.wet_until[chain],
        forbidding_the_same(last_dusty_, problem_.tables[*activity.wet_until][index(end)]));
  result.too_much_held = !hold(next, activity, chain, {start, end});
  if (!activity.product) return result;
  const std::size_t product = *activity.product;
  if ((next.open & bit(product)) == 0) {
    ++next.cost.sessions;
    next.cost.late += late({start - problem_.products[product].set_up, start});
  }
  next.open |= bit(product);
  next.owed &= ~bit(product);
  next.due = problem_.products[product].clean_up > 0 ? static_cast<int>(product) : no_product;
  return result;
}

PartialSchedule PartialGrowth::close(const PartialSchedule& partial, std::size_t stage) const {
  PartialSchedule next = partial.due == no_product ? partial : with_due(partial, Due::done_now);
  next.open = next.closed = 0;
  next.free = std::max(next.free, stage_end(stage));
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    if (next.wet_until[g] <= next.free) next.wet_until[g] = 0;
    if (next.settled[g] <= next.free) next.settled[g] = 0;
    for (HeldAmount& held : next.held[g])
      if (held.until <= next.free) held = {};
    if (next.held[g][0].until < next.held[g][1].until) std::swap(next.held[g][0], next.held[g][1]);
  }
  return next;
}

bool PartialGrowth::is_harmless(
    const PartialSchedule& before, const Grown& after,
    // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): a chain and a stage, both by number
    std::size_t chain, std::size_t stage) const {
  const PartialSchedule& next = after.partial;
  const Slot begin = stage_end(stage);
  if (next.free > begin || next.settled[chain] > begin || next.wet_until[chain] > begin ||
      (costs_count_ && next.cost > before.cost) || next.owed != 0)
    return false;
  for (const HeldAmount& held : next.held[chain])
    if (held.until > begin) return false;
  const Link& link = chains_[chain][before.done[chain]];
  return link.limits.empty() && (link.prepared & prepared_to_come(chains_, next)) == 0;
}

}  // namespace tackfree::solver
