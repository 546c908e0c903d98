#include "tackfree/solver/label_bounds.hpp"

#include <algorithm>
#include <queue>
#include <set>
#include <utility>

namespace tackfree::solver {

namespace {

/// Slots of a table from `from` on, by prefix sums.
Slot between(const std::vector<Slot>& before, Slot from, Slot to) {
  return to <= from ? 0 : before[index(to)] - before[index(from)];
}

}  // namespace

LabelBounds::LabelBounds(const SchedulingProblem& problem, const std::vector<Chain>& chains,
                         Slot target)
    : problem_(problem), chains_(chains), deadlines_(chains.size()) {
  std::vector<Item> all, dusty, coats;
  for (std::size_t g = 0; g < chains.size(); ++g)
    for (std::size_t k = 0; k < chains[g].size(); ++k) {
      const Link& link = chains[g][k];
      const auto in_time = std::upper_bound(link.tail.begin(), link.tail.end(), target);
      const auto latest = static_cast<Slot>(in_time - link.tail.begin()) - 1;
      deadlines_[g].push_back(latest < 0 ? -1 : link.last_start[index(latest)]);
      const Activity& activity = problem.activities[link.activity];
      const Slot start = deadlines_[g].back();
      const Item item{g, k, activity.duration, start < 0 ? -1 : link.end[index(start)]};
      all.push_back(item);
      if (activity.dusty) dusty.push_back(item);
      if (activity.product) coats.push_back(item);
    }
  for (const auto& items : {all, dusty, coats}) add_kind(items);
  std::set<int> amounts;
  for (const Activity& activity : problem.activities)
    for (const Use& use : activity.uses) amounts.insert(use.amount);
  if (!amounts.empty()) add_lanes(*amounts.begin(), true);
  for (const int amount : amounts) add_lanes(amount, false);
  count_sessions();
}

void LabelBounds::add_kind(const std::vector<Item>& items) {
  if (items.empty()) return;
  Kind kind{items, std::vector<Slot>(index(problem_.horizon) + 2, 0)};
  std::sort(kind.items.begin(), kind.items.end(),
            [](const Item& a, const Item& b) { return a.latest_end < b.latest_end; });
  std::vector<Slot> steps(index(problem_.horizon) + 2, 0);  // difference of coverage
  std::set<std::pair<std::size_t, Slot>> seen;
  for (const Item& item : items) {
    const Activity& activity = problem_.activities[chains_[item.chain][item.link].activity];
    if (!seen.insert({activity.open_time, activity.splittable ? 1 : activity.duration}).second)
      continue;
    const OpenTime& time = problem_.open_times[activity.open_time];
    for (Slot s = time.next_open(0); s != never; s = time.next_open(s + 1)) {
      const Slot length = activity.splittable ? 1 : activity.duration;
      ++steps[index(s)];
      --steps[index(std::min(s + length, problem_.horizon + 1))];
    }
  }
  Slot cover = 0;
  for (Slot s = 0; s <= problem_.horizon; ++s) {
    cover += steps[index(s)];
    kind.hours_before[index(s) + 1] = kind.hours_before[index(s)] + (cover > 0 ? 1 : 0);
  }
  kinds_.push_back(std::move(kind));
}

void LabelBounds::add_lanes(int amount, bool by_amount) {
  Lanes lanes{.amount = amount, .by_amount = by_amount};
  const std::size_t size = index(problem_.horizon) + 1;
  std::vector<Slot> release(size, never);
  for (std::size_t g = 0; g < chains_.size(); ++g)
    for (std::size_t k = 0; k < chains_[g].size(); ++k) {
      const Link& link = chains_[g][k];
      const Activity& activity = problem_.activities[link.activity];
      if (activity.uses.empty() || activity.uses.front().amount < amount) continue;
      const Use& use = activity.uses.front();
      lanes.items.push_back({g, k, by_amount ? use.amount : 1, deadlines_[g][k]});
      for (Slot s = link.next_start[0]; s != never; s = link.next_start[index(s) + 1])
        release[index(s)] =
            std::min(release[index(s)], held(problem_, use, {s, link.end[index(s)]}).end);
    }
  std::sort(lanes.items.begin(), lanes.items.end(),
            [](const Item& a, const Item& b) { return a.latest_end < b.latest_end; });
  lanes.first.assign(size, never);
  for (Slot s = problem_.horizon - 1; s >= 0; --s)
    lanes.first[index(s)] = release[index(s)] != never ? s : lanes.first[index(s) + 1];
  lanes.next.assign(size, never);
  // A later start is released no sooner: if some table says otherwise, take the soonest.
  for (Slot s = problem_.horizon - 1, least = never; s >= 0; --s) {
    least = std::min(least, release[index(s)]);
    const Slot from = std::max(least, s + 1);
    if (release[index(s)] != never && least <= problem_.horizon)
      lanes.next[index(s)] = lanes.first[index(std::min(from, problem_.horizon))];
  }
  lanes_.push_back(std::move(lanes));
}

/// Two coats of a chain may share a window only if some start of the first lets the second start in
/// the same window.
void LabelBounds::count_sessions() {
  const std::size_t products = problem_.products.size();
  for (const Chain& chain : chains_) {
    auto& left =
        sessions_left_.emplace_back(chain.size() + 1, std::vector<std::int32_t>(products, 0));
    for (std::size_t k = chain.size(); k-- > 0;) {
      left[k] = left[k + 1];
      const auto product = problem_.activities[chain[k].activity].product;
      if (!product) continue;
      std::size_t apart = k + 1;  // the first link that cannot be in the window of this one
      for (Slot s = chain[k].next_start[0]; s != never && apart < chain.size();
           s = chain[k].next_start[index(s) + 1]) {
        const Run window = problem_.windows[*window_at(problem_, s)];
        std::size_t link = k;
        Slot at = s;
        while (at != never && at < window.end && link < chain.size()) {
          const Slot end = chain[link].end[index(at)];
          Slot ready = 0;
          for (const Link::Wait& wait : chain[link].waits)
            if (wait.ahead == 1) ready = ready_after(problem_, wait, end);
          ++link;
          if (link == chain.size() || ready > problem_.horizon) break;
          at = chain[link].next_start[index(std::max(ready, Slot{0}))];
        }
        apart = std::max(apart, link);
      }
      left[k][*product] = 1 + left[apart][*product];
    }
  }
}

bool LabelBounds::work_fits(const Kind& kind, const Label& label) const {
  Slot work = 0;
  const Slot from = std::min(label.free, problem_.horizon);
  for (const Item& item : kind.items) {
    if (item.link < label.done[item.chain]) continue;
    work += item.duration;
    if (item.latest_end < from || work > between(kind.hours_before, from, item.latest_end))
      return false;
  }
  return true;
}

bool LabelBounds::may_meet_deadlines(const Label& label) const {
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    const std::size_t k = label.done[g];
    if (k >= chains_[g].size()) continue;
    const Slot from = std::max(label.ready[g][0], label.free);
    if (from > problem_.horizon) return false;
    const Slot start = chains_[g][k].next_start[index(from)];
    if (start > deadlines_[g][k]) return false;
    if (label.latest[g][0] > 0 && start > label.latest[g][0]) return false;
  }
  return std::all_of(kinds_.begin(), kinds_.end(),
                     [&](const Kind& kind) { return work_fits(kind, label); });
}

void LabelBounds::earliest_starts(const Label& label, std::size_t chain,
                                  std::vector<Slot>& starts) const {
  const Chain& links = chains_[chain];
  starts.assign(links.size(), 0);
  for (std::size_t k = label.done[chain]; k < links.size(); ++k) {
    const std::size_t ahead = k - label.done[chain];
    Slot from = std::max(starts[k], label.free);
    if (ahead < longest_reach) from = std::max(from, label.ready[chain][ahead]);
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

bool LabelBounds::lanes_suffice(const Lanes& lanes, const Label& label) const {
  const std::int64_t width =
      lanes.by_amount ? problem_.resources.front() : problem_.resources.front() / lanes.amount;
  Slot at = label.free > problem_.horizon ? never : lanes.first[index(label.free)];
  std::int64_t room = at == never ? 0 : width;
  std::int64_t taken = 0;
  for (const Item& item : lanes.items) {
    if (item.link < label.done[item.chain]) continue;
    taken += item.duration;
    if (at == never || at > item.latest_end) return false;
    while (taken > room) {
      at = lanes.next[index(at)];
      if (at == never || at > item.latest_end) return false;
      room += width;
    }
  }
  return true;
}

bool LabelBounds::work_fits_with_waits(const Label& label) const {
  struct Job {
    Slot ready, due, work;
  };
  const Kind& kind = kinds_.front();
  std::vector<Job> jobs;
  std::vector<Slot> starts;
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    earliest_starts(label, g, starts);
    for (std::size_t k = label.done[g]; k < chains_[g].size(); ++k) {
      const Slot deadline = deadlines_[g][k];
      if (deadline < 0 || starts[k] > deadline) return false;
      const std::size_t ahead = k - label.done[g];
      if (ahead < longest_reach && label.latest[g][ahead] > 0 && starts[k] > label.latest[g][ahead])
        return false;
      jobs.push_back({kind.hours_before[index(starts[k])],
                      kind.hours_before[index(chains_[g][k].end[index(deadline)])],
                      problem_.activities[chains_[g][k].activity].duration});
    }
  }
  std::sort(jobs.begin(), jobs.end(), [](const Job& a, const Job& b) { return a.ready < b.ready; });
  std::priority_queue<std::pair<Slot, Slot>, std::vector<std::pair<Slot, Slot>>, std::greater<>>
      waiting;  // due, work
  Slot now = 0;
  for (std::size_t i = 0; i < jobs.size() || !waiting.empty();) {
    if (waiting.empty()) now = std::max(now, jobs[i].ready);
    for (; i < jobs.size() && jobs[i].ready <= now; ++i) waiting.emplace(jobs[i].due, jobs[i].work);
    auto [due, work] = waiting.top();
    waiting.pop();
    const Slot until = i < jobs.size() ? std::min(now + work, jobs[i].ready) : now + work;
    work -= until - now;
    now = until;
    if (work > 0)
      waiting.emplace(due, work);
    else if (now > due)
      return false;
    if (work > 0 && now + work > due) return false;
  }
  return true;
}

bool LabelBounds::may_meet_deadlines_with_waits(const Label& label) const {
  return may_meet_deadlines(label) && work_fits_with_waits(label) &&
         std::all_of(lanes_.begin(), lanes_.end(),
                     [&](const Lanes& lanes) { return lanes_suffice(lanes, label); });
}

std::int32_t LabelBounds::sessions_to_come(const Label& label) const {
  std::int32_t sum = 0;
  for (std::size_t p = 0; p < problem_.products.size(); ++p) {
    std::int32_t most = 0;
    for (std::size_t g = 0; g < chains_.size(); ++g)
      most = std::max(most, sessions_left_[g][label.done[g]][p]);
    // One of them may be the session that is open now.
    if (most > 0 && (label.open & (Products{1} << p)) != 0) --most;
    sum += most;
  }
  return sum;
}

double LabelBounds::urgency(const Label& label) const {
  const std::vector<Slot>& hours = kinds_.front().hours_before;
  double sum = 0;
  for (std::size_t g = 0; g < chains_.size(); ++g) {
    const std::size_t k = label.done[g];
    if (k >= chains_[g].size()) continue;
    const Slot from = std::max(label.ready[g][0], label.free);
    if (from > problem_.horizon) return 1e9;
    const Slot start = chains_[g][k].next_start[index(from)];
    if (start > deadlines_[g][k]) return 1e9;
    sum += 1.0 / (1.0 + between(hours, start, deadlines_[g][k]));
  }
  return sum;
}

}  // namespace tackfree::solver
