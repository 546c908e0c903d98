#include "bench/order_search.hpp"

#include <algorithm>
#include <numeric>
#include <random>
#include <unordered_map>
#include <utility>

#include "bench/list_decoder.hpp"
#include "bench/order_timing.hpp"

namespace tackfree::solver {

namespace {

/// The most activities for which orders are searched in depth.
constexpr std::size_t most_in_depth = 128;

/// Orders of starts in depth first, for any schedule ready by a target.
class DepthSearch {
 public:
  DepthSearch(const SchedulingProblem& problem, const OrderTiming& timing, std::int64_t most_steps)
      : problem_(problem),
        timing_(timing),
        left_(most_steps),
        waits_(problem.activities.size(), 0) {
    for (const Lag& lag : problem.lags) ++waits_[lag.to];
  }

  enum class Answer { found, none, cut };

  Answer by(Slot target, std::vector<Slot>& starts) {
    const std::size_t count = problem_.activities.size();
    latest_.assign(count, problem_.horizon);
    timing_.lower(target, latest_);
    std::vector<Slot> root(count, 0);
    order_.clear();
    seen_.clear();
    kept_ = 0;
    cut_ = false;
    if (!timing_.raise(order_, latest_, root)) return Answer::none;
    const bool found = grow(root);
    if (found) starts = found_;
    return found ? Answer::found : cut_ ? Answer::cut : Answer::none;
  }

  std::int64_t left() const { return left_; }

 private:
  /// What is known of a set of activities already begun: nothing better comes of this state.
  struct State {
    std::vector<Slot> starts;  ///< of the begun: their starts; of others: no sooner than the last
    std::vector<Slot> over;    ///< of the begun: when their effects are over
  };
  using Key = std::pair<std::uint64_t, std::uint64_t>;
  struct KeyHash {
    std::size_t operator()(const Key& key) const {
      return static_cast<std::size_t>((key.first * 0x9E3779B97F4A7C15ULL) ^
                                      (key.second * 0xC2B2AE3D27D4EB4FULL + (key.first >> 29U)));
    }
  };

  bool is_begun(std::size_t i) const {
    return ((i < 64 ? begun_.first >> i : begun_.second >> (i - 64)) & 1U) != 0;
  }
  void flip(std::size_t i) {
    (i < 64 ? begun_.first : begun_.second) ^= std::uint64_t{1} << (i % 64);
  }

  bool grow(const std::vector<Slot>& starts) {
    if (order_.size() == starts.size()) {
      found_ = starts;
      return true;
    }
    if (!energy_suffices(starts) || was_seen(starts)) return false;
    struct Child {
      std::size_t activity;
      std::vector<Slot> starts;
    };
    std::vector<Child> children;
    for (std::size_t i = 0; i < starts.size(); ++i) {
      if (is_begun(i) || waits_[i] > 0) continue;
      if (--left_ < 0) {
        cut_ = true;
        return false;
      }
      std::vector<Slot> next = starts;
      order_.push_back(i);
      if (timing_.raise(order_, latest_, next)) children.push_back({i, std::move(next)});
      order_.pop_back();
    }
    drop_needless_waits(children);
    std::sort(children.begin(), children.end(), [&](const Child& a, const Child& b) {
      const auto key = [&](const Child& c) {
        return std::pair(c.starts[c.activity], latest_[c.activity]);
      };
      return key(a) < key(b);
    });
    for (const Child& child : children) {
      begin(child.activity);
      const bool found = grow(child.starts);
      undo(child.activity);
      if (found) return true;
      if (cut_) return false;
    }
    remember(starts);
    return false;
  }

  /// Without maximum lags, waiting past the end of something that could be over by then is no use.
  template <class Children>
  void drop_needless_waits(Children& children) const {
    if (!problem_.maximum_lags.empty()) return;
    Slot soonest = never;
    for (const auto& child : children)
      soonest = std::min(soonest, timing_.over(child.activity, child.starts[child.activity]));
    std::erase_if(children, [&](const auto& c) {
      return c.starts[c.activity] >= soonest &&
             timing_.over(c.activity, c.starts[c.activity]) > soonest;
    });
  }

  void begin(std::size_t i) {
    order_.push_back(i);
    flip(i);
    for (const std::size_t lag : timing_.lags_from(i)) --waits_[problem_.lags[lag].to];
  }

  void undo(std::size_t i) {
    order_.pop_back();
    flip(i);
    for (const std::size_t lag : timing_.lags_from(i)) ++waits_[problem_.lags[lag].to];
  }

  /// The work left on each resource, and on the workers, fits between the last start and the latest
  /// end.
  bool energy_suffices(const std::vector<Slot>& starts) const {
    if (order_.empty()) return true;
    const Slot now = starts[order_.back()];
    Slot last = 0;
    for (std::size_t i = 0; i < starts.size(); ++i)
      if (!is_begun(i)) last = std::max(last, timing_.end(i, latest_[i]));
    std::vector<std::int64_t> work(problem_.resources.size(), 0);
    std::int64_t hours = 0;
    for (std::size_t i = 0; i < starts.size(); ++i) {
      const Activity& activity = problem_.activities[i];
      const Slot done = timing_.end(i, starts[i]);
      const Slot left = std::clamp(done - std::max(now, starts[i]), Slot{0}, activity.duration);
      const Slot inside =
          is_begun(i) ? std::min(left, std::max(Slot{0}, last - now)) : activity.duration;
      if (activity.workers > 0) hours += activity.splittable && is_begun(i) ? 0 : inside;
      for (const Use& use : activity.uses) work[use.resource] += std::int64_t{inside} * use.amount;
    }
    const std::int64_t span = std::max(Slot{0}, last - now);
    if (hours > span * problem_.workers) return false;
    for (std::size_t r = 0; r < work.size(); ++r)
      if (work[r] > span * problem_.resources[r]) return false;
    return true;
  }

  State state_of(const std::vector<Slot>& starts) const {
    State state{.starts = starts, .over = starts};
    for (std::size_t i = 0; i < starts.size(); ++i)
      if (is_begun(i)) state.over[i] = timing_.over(i, starts[i]);
    return state;
  }

  /// A state that was searched in vain and was nowhere later. Not with maximum lags: there a start
  /// may be put off again, and how far depends on the order.
  bool was_seen(const std::vector<Slot>& starts) const {
    if (!problem_.maximum_lags.empty()) return false;
    const auto found = seen_.find(begun_);
    if (found == seen_.end()) return false;
    const Slot last = order_.empty() ? 0 : starts[order_.back()];
    return std::any_of(found->second.begin(), found->second.end(), [&](const State& old) {
      for (std::size_t i = 0; i < starts.size(); ++i) {
        if (old.starts[i] <= starts[i]) continue;
        if (!is_begun(i) || old.over[i] > last) return false;
      }
      return true;
    });
  }

  void remember(const std::vector<Slot>& starts) {
    if (!problem_.maximum_lags.empty() || kept_ >= most_kept) return;
    ++kept_;
    seen_[begun_].push_back(state_of(starts));
  }

  static constexpr std::size_t most_kept = 200'000;

  const SchedulingProblem& problem_;
  const OrderTiming& timing_;
  std::int64_t left_;
  std::vector<int> waits_;
  std::vector<Slot> latest_, found_;
  std::vector<std::size_t> order_;
  Key begun_{0, 0};
  std::unordered_map<Key, std::vector<State>, KeyHash> seen_;
  std::size_t kept_ = 0;
  bool cut_ = false;
};

/// Lists changed at random, kept when no worse.
class ListImprovement {
 public:
  ListImprovement(const SchedulingProblem& problem, const OrderTiming& timing)
      : problem_(problem), decoder_(problem), random_(1) {
    latest_.assign(problem.activities.size(), problem.horizon);
    timing.lower(problem.horizon, latest_);
  }

  /// Goes on for so many activities more, unless the bound is met.
  const std::optional<Timed>& best(Slot bound, std::int64_t steps) {
    const std::int64_t most = decoder_.steps() + steps;
    if (list_.empty()) {
      list_ = first_list();
      best_ = decoder_.decode(list_, repairs);
    }
    while (decoder_.steps() < most && !(best_ && best_->ready <= bound)) {
      std::vector<std::size_t> tried = list_;
      for (std::size_t moves = 1 + random_() % 3; moves > 0; --moves) move_one(tried);
      auto found = decoder_.decode(tried, repairs);
      const bool keep = found ? !best_ || found->ready <= best_->ready : !best_;
      if (!keep) continue;
      list_ = std::move(tried);
      if (found) {
        // Lists in order of start say the same with fewer accidents.
        if (!best_ || found->ready < best_->ready) sort_by_start(*found);
        best_ = std::move(found);
      }
    }
    return best_;
  }

  /// Starts from a schedule that is better than the best so far.
  void start_from(const Timed& timed) {
    if (list_.empty()) list_ = first_list();
    best_ = timed;
    sort_by_start(timed);
  }

 private:
  static constexpr std::size_t repairs = 20;

  std::vector<std::size_t> first_list() const {
    std::vector<std::size_t> list(problem_.activities.size());
    std::iota(list.begin(), list.end(), std::size_t{0});
    std::vector<int> waits(list.size(), 0);
    for (const Lag& lag : problem_.lags) ++waits[lag.to];
    std::vector<std::size_t> ordered;
    while (ordered.size() < list.size()) {
      std::optional<std::size_t> next;
      for (const std::size_t i : list)
        if (waits[i] == 0 && (!next || latest_[i] < latest_[*next])) next = i;
      waits[*next] = -1;
      ordered.push_back(*next);
      for (const Lag& lag : problem_.lags)
        if (lag.from == *next) --waits[lag.to];
    }
    return ordered;
  }

  void sort_by_start(const Timed& timed) {
    std::stable_sort(list_.begin(), list_.end(), [&](std::size_t a, std::size_t b) {
      return timed.starts[a] < timed.starts[b];
    });
  }

  /// Moves one activity to another place between what it waits for and what waits for it.
  void move_one(std::vector<std::size_t>& list) {
    const std::size_t from = random_() % list.size();
    const std::size_t moved = list[from];
    std::size_t least = 0, most = list.size() - 1;
    for (std::size_t p = 0; p < list.size(); ++p)
      for (const Lag& lag : problem_.lags) {
        if (lag.to == moved && lag.from == list[p]) least = std::max(least, p + 1);
        if (lag.from == moved && lag.to == list[p]) most = std::min(most, p == 0 ? 0 : p - 1);
      }
    if (most < least) return;
    const std::size_t to = least + random_() % (most - least + 1);
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(from));
    list.insert(list.begin() + static_cast<std::ptrdiff_t>(std::min(to, list.size())), moved);
  }

  const SchedulingProblem& problem_;
  ListDecoder decoder_;
  std::mt19937_64 random_;
  std::vector<Slot> latest_;
  std::vector<std::size_t> list_;
  std::optional<Timed> best_;
};

/// The least target that lags and start sets alone allow.
std::optional<Slot> least_target(const SchedulingProblem& problem, const OrderTiming& timing) {
  const std::size_t count = problem.activities.size();
  std::vector<Slot> starts(count, 0);
  if (!timing.raise({}, std::vector<Slot>(count, problem.horizon), starts)) return std::nullopt;
  std::vector<Slot> ends(count);
  for (std::size_t i = 0; i < count; ++i) ends[i] = timing.end(i, starts[i]);
  return ready_of(problem, ends);
}

/// What one activity alone takes fits.
bool each_fits(const SchedulingProblem& problem) {
  for (const Activity& activity : problem.activities) {
    if (activity.workers > problem.workers) return false;
    for (const Use& use : activity.uses)
      if (use.amount > problem.resources[use.resource] && activity.duration > 0) return false;
  }
  return true;
}

class OrderDriver {
 public:
  OrderDriver(const SchedulingProblem& problem, const Solution& known)
      : problem_(problem), timing_(problem), improvement_(problem, timing_) {
    result_.solution = known;
  }

  Searched run(std::int64_t most_steps) {
    const auto least = each_fits(problem_) ? least_target(problem_, timing_) : std::nullopt;
    result_.infeasible = !least || *least == never;
    if (result_.infeasible) return result_;
    result_.ready_bound = *least;
    // Both ways in turn, each longer than before.
    for (std::int64_t share = first_share; !settled() && result_.partials < most_steps;
         share *= 4) {
      share = std::min(share, std::max(first_share, (most_steps - result_.partials) / 2));
      if (const auto& timed = improvement_.best(result_.ready_bound, share)) take(timed->starts);
      if (!settled() && problem_.activities.size() <= most_in_depth)
        search_in_depth(share / steps_in_depth);
      result_.partials += 2 * share;
    }
    result_.ready_proved = ready() && settled();
    return result_;
  }

 private:
  std::optional<Slot> ready() const {
    const Worth w = worth(problem_, result_.solution);
    return w.unplaced == 0 && w.ready != never ? std::optional(w.ready) : std::nullopt;
  }
  bool settled() const {
    return result_.infeasible || (ready() && *ready() <= result_.ready_bound);
  }

  bool take(const std::vector<Slot>& starts) {
    Solution candidate = solution_from(problem_, starts);
    if (!(worth(problem_, candidate) < worth(problem_, result_.solution))) return false;
    result_.solution = std::move(candidate);
    return true;
  }

  void search_in_depth(std::int64_t steps) {
    DepthSearch depth(problem_, timing_, steps);
    while (!settled()) {
      std::vector<Slot> starts;
      const auto answer = depth.by(ready() ? *ready() - 1 : problem_.horizon, starts);
      if (answer == DepthSearch::Answer::cut) return;
      if (answer == DepthSearch::Answer::found) {
        if (!take(starts)) return;
        improvement_.start_from({starts, *ready()});
      } else if (ready()) {
        result_.ready_bound = *ready();
      } else {
        result_.infeasible = true;
      }
    }
  }

  static constexpr std::int64_t first_share = 20'000;
  /// What a step in depth costs, in activities placed.
  static constexpr std::int64_t steps_in_depth = 20;

  const SchedulingProblem& problem_;
  OrderTiming timing_;
  ListImprovement improvement_;
  Searched result_;
};

}  // namespace

std::optional<Searched> best_by_order(const SchedulingProblem& problem, const Solution& known,
                                      std::int64_t most_steps) {
  if (!OrderTiming::can_time(problem) || problem.activities.empty()) return std::nullopt;
  return OrderDriver(problem, known).run(most_steps);
}

}  // namespace tackfree::solver
