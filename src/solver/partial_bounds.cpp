#include "tackfree/solver/partial_bounds.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace tackfree::solver {

namespace {

/// Slots of a table from `from` on, by prefix sums.
Slot between(const std::vector<Slot>& before, Slot from, Slot to) {
  return to <= from ? 0 : before[index(to)] - before[index(from)];
}

}  // namespace

BoundTables::BoundTables(const SchedulingProblem& of, const std::vector<Chain>& lines)
    : problem(of), chains(lines) {
  std::vector<Item> all, dusty, coats;
  for (std::size_t g = 0; g < chains.size(); ++g)
    for (std::size_t k = 0; k < chains[g].size(); ++k) {
      const Activity& activity = problem.activities[chains[g][k].activity];
      const Item item{g, k, activity.duration};
      all.push_back(item);
      if (activity.dusty) dusty.push_back(item);
      if (activity.product) coats.push_back(item);
    }
  for (const auto& items : {all, dusty, coats}) add_kind(items);
  std::set<int> amounts;
  for (const Activity& activity : problem.activities)
    for (const Use& use : activity.uses) amounts.insert(use.amount);
  if (!amounts.empty()) add_space_lanes(*amounts.begin(), true);
  for (const int amount : amounts) add_space_lanes(amount, false);
  count_sessions();
  for (const Chain& chain : chains) {
    auto& of_chain = crossings.emplace_back();
    for (std::size_t k = 0; k < chain.size(); ++k)
      for (const Link::Crossing& crossing : chain[k].lets_begin) of_chain.emplace_back(k, crossing);
  }
}

void BoundTables::add_kind(const std::vector<Item>& items) {
  if (items.empty()) return;
  Kind kind{items, std::vector<Slot>(index(problem.horizon) + 2, 0)};
  std::vector<Slot> steps(index(problem.horizon) + 2, 0);  // difference of coverage
  std::set<std::pair<std::size_t, Slot>> seen;
  for (const Item& item : items) {
    const Activity& activity = problem.activities[chains[item.chain][item.link].activity];
    if (!seen.insert({activity.open_time, activity.splittable ? 1 : activity.duration}).second)
      continue;
    const OpenTime& time = problem.open_times[activity.open_time];
    for (Slot s = time.next_open(0); s != never; s = time.next_open(s + 1)) {
      const Slot length = activity.splittable ? 1 : activity.duration;
      ++steps[index(s)];
      --steps[index(std::min(s + length, problem.horizon + 1))];
    }
  }
  Slot cover = 0;
  for (Slot s = 0; s <= problem.horizon; ++s) {
    cover += steps[index(s)];
    kind.hours_before[index(s) + 1] = kind.hours_before[index(s)] + (cover > 0 ? 1 : 0);
  }
  kinds.push_back(std::move(kind));
}

void BoundTables::add_space_lanes(int amount, bool by_amount) {
  const int capacity = problem.resources.front();
  Lanes made{.width = by_amount ? capacity : capacity / amount};
  std::vector<Slot> released(index(problem.horizon) + 1, never);
  for (std::size_t g = 0; g < chains.size(); ++g)
    for (std::size_t k = 0; k < chains[g].size(); ++k) {
      const Link& link = chains[g][k];
      const Activity& activity = problem.activities[link.activity];
      if (activity.uses.empty() || activity.uses.front().amount < amount) continue;
      const Use& use = activity.uses.front();
      made.items.push_back({g, k, by_amount ? use.amount : 1});
      for (Slot s = link.next_start[0]; s != never; s = link.next_start[index(s) + 1])
        released[index(s)] =
            std::min(released[index(s)], held(problem, use, {s, link.end[index(s)]}).end);
    }
  add_lanes(std::move(made), released);
}

void BoundTables::add_lanes(Lanes made, const std::vector<Slot>& released) {
  made.first.assign(released.size(), never);
  for (Slot s = problem.horizon - 1; s >= 0; --s)
    made.first[index(s)] = released[index(s)] != never ? s : made.first[index(s) + 1];
  made.next.assign(released.size(), never);
  // A later start is released no sooner: if some table says otherwise, take the soonest.
  for (Slot s = problem.horizon - 1, least = never; s >= 0; --s) {
    least = std::min(least, released[index(s)]);
    const Slot from = std::max(least, s + 1);
    if (released[index(s)] != never && least <= problem.horizon)
      made.next[index(s)] = made.first[index(std::min(from, problem.horizon))];
  }
  lanes.push_back(std::move(made));
}

/// Two coats of a chain may share a window only if some start of the first lets the second start in
/// the same window.
void BoundTables::count_sessions() {
  const std::size_t products = problem.products.size();
  for (const Chain& chain : chains) {
    auto& left =
        sessions_left.emplace_back(chain.size() + 1, std::vector<std::int32_t>(products, 0));
    for (std::size_t k = chain.size(); k-- > 0;) {
      left[k] = left[k + 1];
      const auto product = problem.activities[chain[k].activity].product;
      if (!product) continue;
      std::size_t apart = k + 1;  // the first link that cannot be in the window of this one
      for (Slot s = chain[k].next_start[0]; s != never && apart < chain.size();
           s = chain[k].next_start[index(s) + 1]) {
        const Run window = problem.windows[*window_at(problem, s)];
        std::size_t link = k;
        Slot at = s;
        while (at != never && at < window.end && link < chain.size()) {
          const Slot end = chain[link].end[index(at)];
          Slot ready = 0;
          for (const Link::Wait& wait : chain[link].waits)
            if (wait.ahead == 1) ready = ready_after(problem, wait, end);
          ++link;
          if (link == chain.size() || ready > problem.horizon) break;
          at = chain[link].next_start[index(std::max(ready, Slot{0}))];
        }
        apart = std::max(apart, link);
      }
      left[k][*product] = 1 + left[apart][*product];
    }
  }
}

PartialBounds::PartialBounds(const SchedulingProblem& problem, const std::vector<Chain>& chains,
                             Slot target)
    : PartialBounds(std::make_shared<const BoundTables>(problem, chains), target) {}

PartialBounds::PartialBounds(std::shared_ptr<const BoundTables> tables, Slot target)
    : tables_(std::move(tables)),
      problem_(tables_->problem),
      chains_(tables_->chains),
      deadlines_(deadlines_for(chains_, target)) {
  const std::vector<Slot>& hours = tables_->kinds.front().hours_before;
  for (Deadlines& deadlines : deadlines_by_last_set(problem_, chains_, hours, deadlines_))
    add_last_set(std::move(deadlines));
}

void PartialBounds::add_last_set(Deadlines deadlines) {
  LastSet& last_set = last_sets_.emplace_back();
  for (const BoundTables::Kind& kind : tables_->kinds)
    last_set.work.push_back(in_order(deadlines, kind.items, &kind.hours_before));
  for (const BoundTables::Lanes& lanes : tables_->lanes)
    last_set.lanes.push_back(in_order(deadlines, lanes.items, nullptr));
  last_set.deadlines = std::move(deadlines);
}

PartialBounds::InOrder PartialBounds::in_order(const Deadlines& deadlines,
                                               const std::vector<Item>& items,
                                               const std::vector<Slot>* hours_before) const {
  InOrder all;
  for (const Item& item : items) {
    Due due{static_cast<std::uint8_t>(item.chain), static_cast<std::uint8_t>(item.link), item.takes,
            deadlines[item.chain][item.link], -1};
    if (hours_before != nullptr && due.latest >= 0) {
      due.latest = chains_[item.chain][item.link].end[index(due.latest)];
      due.hours_before = (*hours_before)[index(due.latest)];
    }
    all.push_back(due);
  }
  std::sort(all.begin(), all.end(), [](const Due& a, const Due& b) { return a.latest < b.latest; });
  return all;
}

bool PartialBounds::next_last_set(PartialSchedule& partial) const {
  partial.fits_until = nothing_fits;
  return ++partial.last_set < last_sets_.size();
}

bool PartialBounds::may_start(PartialSchedule& partial, std::size_t chain, std::size_t link,
                              Slot start) const {
  while (start > last_sets_[partial.last_set].deadlines[chain][link])
    if (!next_last_set(partial)) return false;
  return true;
}

bool PartialBounds::work_fits(const LastSet& last_set, std::size_t kind,
                              PartialSchedule& partial) const {
  const std::vector<Slot>& hours = tables_->kinds[kind].hours_before;
  const Slot gone = hours[index(std::min(partial.free, problem_.horizon))];
  Slot& until = partial.fits_until[kind];
  if (gone <= until) return true;
  Slot work = 0, least = never;
  for (const Due& due : last_set.work[kind]) {
    if (due.link < partial.done[due.chain]) continue;
    work += due.takes;
    least = std::min(least, due.hours_before - work);
    if (gone > least) return false;
  }
  // Work done only leaves more hours for the rest, so this holds for all that grows from the
  // partial schedule.
  until = least;
  return true;
}

bool PartialBounds::meets_deadlines(const LastSet& last_set, PartialSchedule& partial) const {
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    const std::size_t k = partial.done[g];
    if (k >= chains_[g].size()) continue;
    const Link& link = chains_[g][k];
    Slot from = std::max(partial.ready[g][0], partial.free);
    for (const Link::Crossing& crossing : link.begins_after)
      if (partial.done[crossing.chain] > crossing.link)
        from = std::max(from, partial.crossed[crossing.number]);
    // A deadline is a start, so the first start from then on is in time.
    if (from > last_set.deadlines[g][k]) return false;
    if (partial.latest[g][0] > 0 && link.next_start[index(from)] > partial.latest[g][0])
      return false;
  }
  for (std::size_t kind = 0; kind < last_set.work.size(); ++kind)
    if (!work_fits(last_set, kind, partial)) return false;
  return true;
}

bool PartialBounds::may_meet_deadlines(PartialSchedule& partial) const {
  while (!meets_deadlines(last_sets_[partial.last_set], partial))
    if (!next_last_set(partial)) return false;
  return true;
}

void PartialBounds::earliest_starts(const PartialSchedule& partial, std::size_t chain,
                                    std::vector<Slot>& starts) const {
  const Chain& links = chains_[chain];
  starts.assign(links.size(), 0);
  for (std::size_t k = partial.done[chain]; k < links.size(); ++k) {
    const std::size_t ahead = k - partial.done[chain];
    Slot from = std::max(starts[k], partial.free);
    if (ahead < longest_reach) from = std::max(from, partial.ready[chain][ahead]);
    for (const Link::Crossing& crossing : links[k].begins_after)
      if (partial.done[crossing.chain] > crossing.link)
        from = std::max(from, partial.crossed[crossing.number]);
    starts[k] = from > problem_.horizon ? never : links[k].next_start[index(from)];
    if (starts[k] == never) {
      std::fill(starts.begin() + static_cast<std::ptrdiff_t>(k), starts.end(), never);
      return;
    }
    for (const Link::Wait& wait : links[k].waits) {
      const Slot ready = ready_after(problem_, wait, links[k].end[index(starts[k])]);
      Slot& later = starts[k + wait.ahead];
      later = std::max(later, ready);
    }
  }
}

Slot PartialBounds::crossed_after(std::size_t chain, std::size_t link,
                                  const Link::Crossing& crossing, Slot start) const {
  return ready_after(problem_, crossing, chains_[chain][link].end[index(start)]);
}

bool PartialBounds::lanes_suffice(const LastSet& last_set, std::size_t number,
                                  const PartialSchedule& partial) const {
  const BoundTables::Lanes& lanes = tables_->lanes[number];
  Slot at = partial.free > problem_.horizon ? never : lanes.first[index(partial.free)];
  std::int64_t room = at == never ? 0 : lanes.width;
  std::int64_t taken = 0;
  for (const Due& due : last_set.lanes[number]) {
    if (due.link < partial.done[due.chain]) continue;
    taken += due.takes;
    if (at == never || at > due.latest) return false;
    while (taken > room) {
      at = lanes.next[index(at)];
      if (at == never || at > due.latest) return false;
      room += lanes.width;
    }
  }
  return true;
}

/// Work that may be broken off, the soonest due first, is late only if no order is in time.
bool PartialBounds::work_fits_with_waits(const LastSet& last_set,
                                         const PartialSchedule& partial) const {
  const std::vector<Slot>& hours = tables_->kinds.front().hours_before;
  jobs_.clear();
  for (const Due& due : last_set.work.front())
    if (due.link >= partial.done[due.chain])
      jobs_.push_back({hours[index(starts_[due.chain][due.link])], due.hours_before, due.takes});
  std::sort(jobs_.begin(), jobs_.end(),
            [](const Job& a, const Job& b) { return a.ready < b.ready; });
  const auto later = [](const Job& a, const Job& b) { return a.due > b.due; };
  waiting_.clear();  // a heap, the soonest due in front
  Slot now = 0;
  for (std::size_t i = 0; i < jobs_.size() || !waiting_.empty();) {
    if (waiting_.empty()) now = std::max(now, jobs_[i].ready);
    for (; i < jobs_.size() && jobs_[i].ready <= now; ++i) {
      waiting_.push_back(jobs_[i]);
      std::push_heap(waiting_.begin(), waiting_.end(), later);
    }
    Job& first = waiting_.front();
    if (now + first.work > first.due) return false;
    const Slot until =
        i < jobs_.size() ? std::min(now + first.work, jobs_[i].ready) : now + first.work;
    first.work -= until - now;
    now = until;
    if (first.work > 0) continue;
    std::pop_heap(waiting_.begin(), waiting_.end(), later);
    waiting_.pop_back();
  }
  return true;
}

bool PartialBounds::meets_deadlines_with_waits(const LastSet& last_set,
                                               PartialSchedule& partial) const {
  if (!meets_deadlines(last_set, partial)) return false;
  for (std::size_t g = 0; g < chains_.size(); ++g)
    for (std::size_t k = partial.done[g]; k < chains_[g].size(); ++k) {
      if (last_set.deadlines[g][k] < 0 || starts_[g][k] > last_set.deadlines[g][k]) return false;
      const std::size_t ahead = k - partial.done[g];
      if (ahead < longest_reach && partial.latest[g][ahead] > 0 &&
          starts_[g][k] > partial.latest[g][ahead])
        return false;
    }
  if (!last_set.work.empty() && !work_fits_with_waits(last_set, partial)) return false;
  for (std::size_t number = 0; number < last_set.lanes.size(); ++number)
    if (!lanes_suffice(last_set, number, partial)) return false;
  return true;
}

bool PartialBounds::may_meet_deadlines_with_waits(PartialSchedule& partial) const {
  if (!may_meet_deadlines(partial)) return false;
  starts_.resize(chains_.size());
  for (std::size_t g = 0; g < chains_.size(); ++g) earliest_starts(partial, g, starts_[g]);
  while (!meets_deadlines_with_waits(last_sets_[partial.last_set], partial))
    if (!next_last_set(partial)) return false;
  return true;
}

std::int32_t PartialBounds::sessions_to_come(const PartialSchedule& partial) const {
  std::int32_t sum = 0;
  for (std::size_t p = 0; p < problem_.products.size(); ++p) {
    std::int32_t most = 0;
    for (std::size_t g = 0; g < chains_.size(); ++g)
      most = std::max(most, tables_->sessions_left[g][partial.done[g]][p]);
    // One of them may be the session that is open now.
    if (most > 0 && (partial.open & (Products{1} << p)) != 0) --most;
    sum += most;
  }
  return sum;
}

/// The hours to spare of all the work count like those of one more chain.
double PartialBounds::urgency(const PartialSchedule& partial) const {
  const std::vector<Slot>& hours = tables_->kinds.front().hours_before;
  const Slot fits_until = partial.fits_until.front();
  double sum = 0;
  if (fits_until >= 0)
    sum = 1.0 / (1.0 + fits_until - hours[index(std::min(partial.free, problem_.horizon))]);
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    const std::size_t k = partial.done[g];
    if (k >= chains_[g].size()) continue;
    const Slot from = std::max(partial.ready[g][0], partial.free);
    if (from > problem_.horizon) return 1e9;
    const Slot start = chains_[g][k].next_start[index(from)];
    const Slot deadline = last_sets_[partial.last_set].deadlines[g][k];
    if (start > deadline) return 1e9;
    sum += 1.0 / (1.0 + between(hours, start, deadline));
  }
  return sum;
}

}  // namespace tackfree::solver
