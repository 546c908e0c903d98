#include "tackfree/solver/label_search.hpp"

#include "tackfree/solver/label.hpp"
#include "tackfree/solver/placement.hpp"

#include <algorithm>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

namespace tackfree::solver {

namespace {

std::size_t index(Slot slot) { return static_cast<std::size_t>(slot); }
Products bit(std::size_t product) { return Products{1} << product; }

/// One run over all orders whose schedules are ready by `target`.
class Search {
 public:
  /// `for_cost` false: the earliest ready, first of all. True: the least cost among those ready by
  /// `target`, for which coats may also wait for a later window.
  Search(const SchedulingProblem& problem, const std::vector<Chain>& chains, Slot target,
         bool for_cost, std::int64_t most_labels)
      : problem_(problem),
        chains_(chains),
        target_(target),
        for_cost_(for_cost),
        most_(most_labels) {
    window_of_.assign(index(problem.horizon) + 1, -1);
    for (std::size_t w = 0; w < problem.windows.size(); ++w)
      for (Slot s = problem.windows[w].begin; s < problem.windows[w].end; ++s)
        window_of_[index(s)] = static_cast<std::int32_t>(w);
  }

  /// The starts of the best schedule in order, or nothing when there is none ready by the target.
  std::optional<std::vector<std::pair<std::size_t, Slot>>> best() {
    labels_.emplace_back();
    std::vector<std::int32_t> level{0};
    for (std::size_t n = 0; n < problem_.activities.size() && !level.empty(); ++n) {
      buckets_.clear();
      for (const std::int32_t parent : level) {
        for (std::size_t g = 0; g < chains_.size(); ++g) extend(parent, g);
        if (truncated()) return std::nullopt;
      }
      level.clear();
      for (auto& [key, bucket] : buckets_) level.insert(level.end(), bucket.begin(), bucket.end());
      std::sort(level.begin(), level.end());  // the order of making, not of hashing
    }
    std::int32_t best = -1;
    for (const std::int32_t i : level)
      if (label(i).owed == 0 && (best < 0 || better(label(i), label(best)))) best = i;
    if (best < 0) return std::nullopt;
    std::vector<std::pair<std::size_t, Slot>> starts;
    for (std::int32_t i = best; label(i).parent >= 0; i = label(i).parent)
      starts.emplace_back(label(i).activity, label(i).start);
    std::reverse(starts.begin(), starts.end());
    return starts;
  }

  bool truncated() const { return made() >= most_; }
  std::int64_t made() const { return static_cast<std::int64_t>(labels_.size()); }

 private:
  const Label& label(std::int32_t i) const { return labels_[static_cast<std::size_t>(i)]; }

  bool better(const Label& a, const Label& b) const {
    if (!for_cost_ && a.met != b.met) return a.met < b.met;
    return a.cost < b.cost;
  }

  /// When the chain's next link may start by its waits.
  Slot ready(const Label& at, std::size_t g) const {
    Slot ready = 0;
    for (const Link::Wait& wait : chains_[g][at.done[g]].waits)
      ready = std::max(ready, ready_after(problem_, wait, at.ends[g][wait.back - 1]));
    return ready;
  }

  /// What becomes of a clean-up that is due when other work is added: done now, or put off because
  /// the product is used again in this window.
  enum class Due { none, done_now, put_off, goes_on };

  void extend(std::int32_t parent, std::size_t g) {
    const Label& from = label(parent);
    if (from.done[g] >= chains_[g].size()) return;
    const auto product = problem_.activities[chains_[g][from.done[g]].activity].product;
    if (from.due == no_product) {
      add(parent, g, Due::none);
      return;
    }
    const bool same = product && static_cast<int>(*product) == from.due;
    add(parent, g, same ? Due::goes_on : Due::put_off);
    add(parent, g, Due::done_now);
  }

  void add(std::int32_t parent, std::size_t g, Due due) {
    Label base = label(parent);
    const Slot waits_over = ready(base, g);
    if (waits_over == never) return;
    if (due == Due::done_now) {
      const auto product = static_cast<std::size_t>(base.due);
      base.free += problem_.products[product].clean_up;
      base.closed |= bit(product);
      base.cost.late += late({base.free - problem_.products[product].clean_up, base.free});
    }
    if (due == Due::put_off) base.owed |= bit(static_cast<std::size_t>(base.due));
    const int still_due = due == Due::goes_on ? base.due : no_product;
    base.due = no_product;
    const bool this_window_only = due == Due::put_off || due == Due::goes_on || base.owed != 0;
    const bool session_work =
        problem_.activities[chains_[g][base.done[g]].activity].product.has_value();
    for (Slot from = std::max(base.free, waits_over); from <= problem_.horizon;) {
      const Slot start = first_start(base, g, from, still_due);
      if (start == never) return;
      const std::int32_t window = window_of_[index(start)];
      const Slot end = chains_[g][base.done[g]].end[index(start)];
      if (this_window_only && (window != base.window || window_of_[index(end - 1)] != window))
        return;
      if (!keep(parent, base, g, start, still_due)) return;
      // Only sessions gain by waiting, and only for another window.
      if (!for_cost_ || !session_work || this_window_only) return;
      from = problem_.windows[static_cast<std::size_t>(window)].end;
    }
  }

  /// Does the work of chain `g` need a set-up when it starts in `window`?
  bool needs_set_up(const Label& base, std::size_t product, std::int32_t window,
                    int still_due) const {
    return window != base.window ||
           (still_due != static_cast<int>(product) && (base.owed & bit(product)) == 0);
  }

  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): a slot and a product, both by number
  Slot first_start(const Label& base, std::size_t g, Slot from, int still_due) const {
    const Link& link = chains_[g][base.done[g]];
    const Activity& activity = problem_.activities[link.activity];
    while (from <= problem_.horizon) {
      const Slot start = link.next_start[index(from)];
      if (start == never) return never;
      Slot least = start;
      if (activity.dusty)
        for (const Slot wet : base.wet_until) least = std::max(least, wet);
      if (activity.wet_until) least = std::max(least, base.dust_settled);
      if (activity.product) {
        const std::int32_t window = window_of_[index(start)];
        const Run run = problem_.windows[static_cast<std::size_t>(window)];
        if (needs_set_up(base, *activity.product, window, still_due)) {
          least = std::max(
              least, std::max(base.free, run.begin) + problem_.products[*activity.product].set_up);
          if (window == base.window && (base.closed & bit(*activity.product)) != 0)
            least = std::max(least, run.end);
        }
      }
      if (least == start) return start;
      from = least;
    }
    return never;
  }

  Slot late(Run work) const {
    Slot sum = 0;
    for (const Run stretch : problem_.late)
      if (overlap(stretch, work))
        sum += std::min(stretch.end, work.end) - std::max(stretch.begin, work.begin);
    return sum;
  }

  /// Adds the label unless it cannot be ready by the target or another is as good; false when later
  /// starts cannot be ready either.
  bool keep(std::int32_t parent, const Label& base, std::size_t g, Slot start, int still_due) {
    const Link& link = chains_[g][base.done[g]];
    const Activity& activity = problem_.activities[link.activity];
    Label next = base;
    next.parent = parent;
    next.activity = link.activity;
    next.start = start;
    const Slot end = link.end[index(start)];
    next.free = end;
    auto& ends = next.ends[g];
    std::copy_backward(ends.begin(), ends.end() - 1, ends.end());
    ends[0] = end;
    ++next.done[g];
    next.cost.sum_of_starts += start;
    for (const Run piece : pieces_from(problem_, activity, start)) next.cost.late += late(piece);
    for (const std::size_t goal : link.goals)
      next.met = std::max(next.met, problem_.tables[goal][index(end)]);
    if (activity.dusty) next.dust_settled = end + problem_.dust_settles;
    if (activity.wet_until)
      next.wet_until[g] =
          std::max(next.wet_until[g], problem_.tables[*activity.wet_until][index(end)]);
    enter_window(next, base, start, end);
    if (activity.product) open_session(next, base, *activity.product, start, still_due);
    if (bound(next) > target_) return false;
    insert(next);
    return true;
  }

  void enter_window(Label& next, const Label& base, Slot start, Slot end) const {
    next.window = window_of_[index(end - 1)];
    if (next.window != base.window || window_of_[index(start)] != base.window) next.closed = 0;
  }

  void open_session(Label& next, const Label& base, std::size_t product, Slot start,
                    int still_due) const {
    if (needs_set_up(base, product, window_of_[index(start)], still_due)) {
      ++next.cost.sessions;
      next.cost.late += late({start - problem_.products[product].set_up, start});
    }
    next.owed &= ~bit(product);
    next.due = static_cast<int>(product);
  }

  Slot bound(const Label& at) const {
    Slot bound = at.met;
    for (std::size_t g = 0; g < chains_.size(); ++g) {
      if (at.done[g] >= chains_[g].size()) continue;
      const Slot from = std::max(ready(at, g), at.free);
      bound = std::max(bound,
                       from > problem_.horizon ? never : chains_[g][at.done[g]].tail[index(from)]);
    }
    return bound;
  }

  // Labels are only compared when the same work is done and the same products are open.
  static std::string key_of(const Label& at) {
    std::string key(at.done.begin(), at.done.end());
    const bool open = at.due != no_product || at.owed != 0 || at.closed != 0;
    for (const std::int64_t part : {std::int64_t{at.due}, std::int64_t{at.owed},
                                    std::int64_t{at.closed}, std::int64_t{open ? at.window : -1}})
      key += std::to_string(part) + ",";
    return key;
  }

  /// Can `a` do all that `b` can, nowhere later and at no more cost?
  bool as_good(const Label& a, const Label& b) const {
    if (a.free > b.free || a.met > b.met) return false;
    if (for_cost_ && a.cost > b.cost) return false;
    if (std::max(a.dust_settled, b.free) > std::max(b.dust_settled, b.free)) return false;
    for (std::size_t g = 0; g < chains_.size(); ++g) {
      if (std::max(a.wet_until[g], b.free) > std::max(b.wet_until[g], b.free)) return false;
      if (a.done[g] >= chains_[g].size()) continue;
      if (std::max(ready(a, g), b.free) > std::max(ready(b, g), b.free)) return false;
      for (const std::size_t back : chains_[g][a.done[g]].remembered)
        if (a.ends[g][back - 1] > b.ends[g][back - 1]) return false;
    }
    return true;
  }

  void insert(const Label& next) {
    std::vector<std::int32_t>& bucket = buckets_[key_of(next)];
    for (const std::int32_t other : bucket)
      if (as_good(label(other), next)) return;
    std::erase_if(bucket, [&](std::int32_t other) { return as_good(next, label(other)); });
    bucket.push_back(static_cast<std::int32_t>(labels_.size()));
    labels_.push_back(next);
  }

  const SchedulingProblem& problem_;
  const std::vector<Chain>& chains_;
  Slot target_;
  bool for_cost_;
  std::int64_t most_;
  std::vector<std::int32_t> window_of_;
  std::vector<Label> labels_;
  std::unordered_map<std::string, std::vector<std::int32_t>> buckets_;
};

/// The starts as a solution, with the reasons that the rules give and, where a start was put off
/// for the good of the whole, the order.
Solution solution_of(const SchedulingProblem& problem,
                     const std::vector<std::pair<std::size_t, Slot>>& starts) {
  Placement placement(problem);
  for (const auto& [activity, start] : starts) {
    SolvedActivity found = placement.earliest(activity);
    const bool put_off = !found.placed() || found.begin() != start;
    found.pieces = pieces_from(problem, problem.activities[activity], start);
    std::erase_if(found.holds, [&, s = start](const Hold& hold) { return hold.until > s; });
    if (put_off) found.holds.push_back({.by = Hold::By::order, .until = start});
    placement.place(activity, std::move(found));
  }
  return placement.solution();
}

}  // namespace

std::optional<Searched> best_schedule(const SchedulingProblem& problem, const Solution& known,
                                      std::int64_t most_labels) {
  const Worth known_worth = worth(problem, known);
  const auto chains = chains_of(problem);
  if (!chains || known_worth.unplaced > 0 || known_worth.ready == never) return std::nullopt;
  Searched found{.solution = known};
  for (const Chain& chain : *chains)
    found.ready_bound = std::max(found.ready_bound, chain.front().tail[0]);
  Slot ready = known_worth.ready;
  found.ready_proved = found.ready_bound >= ready;
  if (!found.ready_proved) {
    Search sooner(problem, *chains, ready - 1, false, most_labels);
    const auto starts = sooner.best();
    found.labels += sooner.made();
    if (sooner.truncated()) return found;
    if (starts) found.solution = solution_of(problem, *starts);
    ready = worth(problem, found.solution).ready;
    found.ready_bound = ready;
    found.ready_proved = true;
  }
  Search cheaper(problem, *chains, ready, true, most_labels);
  const auto starts = cheaper.best();
  found.labels += cheaper.made();
  if (cheaper.truncated()) return found;
  found.sessions_proved = true;
  if (starts) {
    Solution cheapest = solution_of(problem, *starts);
    if (worth(problem, cheapest) < worth(problem, found.solution))
      found.solution = std::move(cheapest);
  }
  return found;
}

}  // namespace tackfree::solver
