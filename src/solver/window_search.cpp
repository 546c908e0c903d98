#include "tackfree/solver/window_search.hpp"

#include "tackfree/solver/partial_dominance.hpp"
#include "tackfree/solver/partial_growth.hpp"

#include <algorithm>
#include <cstring>
#include <utility>

namespace tackfree::solver {

namespace {

struct Key {
  std::uint64_t done = 0;
  std::uint64_t session = 0;
  friend bool operator==(const Key&, const Key&) = default;
};

/// Mixed as splitmix64 does, with its constants (from memory).
struct KeyHash {
  std::size_t operator()(const Key& key) const {
    std::uint64_t mixed =
        (key.done ^ (key.session * 0x9E3779B97F4A7C15ULL)) * 0xBF58476D1CE4E5B9ULL;
    mixed ^= mixed >> 31U;
    return static_cast<std::size_t>(mixed * 0x94D049BB133111EBULL);
  }
};

/// Partial schedules of which none is as good as another. What it takes of memory is used again and
/// again: a search fills and empties it for each level.
class Front {
 public:
  Front(const PartialDominance& dominance, Products relevant)
      : dominance_(&dominance), relevant_(relevant), heads_(least_heads, none) {}

  /// Adds to `compared` the partial schedules that it was compared with.
  bool insert(const PartialSchedule& partial, std::int64_t& compared) {
    const Key key = key_of(partial);
    const std::size_t head = find(key);
    for (std::uint32_t i = heads_[head]; i != none; i = next_[i]) {
      ++compared;
      if (!dropped_[i] && dominance_->as_good(partials_[i], partial)) return false;
    }
    std::uint32_t* link = &heads_[head];
    while (*link != none) {
      ++compared;
      if (dominance_->as_good(partial, partials_[*link])) {
        dropped_[*link] = true;
        // The first of a list stays, so that its key keeps its place.
        if (link != &heads_[head]) {
          *link = next_[*link];
          continue;
        }
      }
      link = &next_[*link];
    }
    const auto number = static_cast<std::uint32_t>(partials_.size());
    if (heads_[head] == none) ++used_heads_;
    *link = number;
    partials_.push_back(partial);
    keys_.push_back(key);
    next_.push_back(none);
    dropped_.push_back(false);
    if (2 * used_heads_ > heads_.size()) grow();
    return true;
  }

  /// What is left, in the order of making.
  std::vector<std::uint32_t> left() const {
    std::vector<std::uint32_t> left;
    for (std::uint32_t i = 0; i < partials_.size(); ++i)
      if (!dropped_[i]) left.push_back(i);
    return left;
  }
  const PartialSchedule& partial(std::uint32_t number) const { return partials_[number]; }
  bool is_empty() const { return partials_.empty(); }

  void clear() {
    partials_.clear();
    keys_.clear();
    next_.clear();
    dropped_.clear();
    used_heads_ = 0;
    std::fill(heads_.begin(), heads_.end(), none);
  }

 private:
  static constexpr std::uint32_t none = ~std::uint32_t{0};
  static constexpr std::size_t least_heads = 64;

  /// Where the list of the key begins, or may begin.
  std::size_t find(const Key& key) const {
    const std::size_t mask = heads_.size() - 1;
    std::size_t at = KeyHash{}(key)&mask;
    while (heads_[at] != none && !(keys_[heads_[at]] == key)) at = (at + 1) & mask;
    return at;
  }

  void grow() {
    const std::vector<std::uint32_t> old = std::move(heads_);
    heads_.assign(4 * old.size(), none);
    for (const std::uint32_t first : old)
      if (first != none) heads_[find(keys_[first])] = first;
  }

  Key key_of(const PartialSchedule& partial) const {
    constexpr std::uint64_t fnv_prime = 0x100000001B3;  // of FNV-1a, 64 bits, from memory
    Key key;
    static_assert(sizeof key.done == most_chains);
    std::memcpy(&key.done, partial.done.data(), sizeof key.done);
    for (const std::uint64_t part :
         {static_cast<std::uint64_t>(partial.due + 1), std::uint64_t{partial.owed},
          std::uint64_t{partial.open & relevant_}, std::uint64_t{partial.closed}})
      key.session = key.session * fnv_prime + part;
    return key;
  }

  const PartialDominance* dominance_;
  Products relevant_;
  std::vector<PartialSchedule> partials_;
  std::vector<Key> keys_;
  std::vector<std::uint32_t> next_;  ///< the next partial schedule of the same key
  std::vector<std::uint8_t> dropped_;
  std::vector<std::uint32_t> heads_;  ///< open addressing by key
  std::size_t used_heads_ = 0;
};

class Search final : public OngoingSearch {
 public:
  Search(const std::shared_ptr<const BoundTables>& tables, const PartialGrowth& growth,
         const SearchAim& aim)
      : problem_(tables->problem),
        chains_(tables->chains),
        aim_(aim),
        bounds_(tables, aim.target),
        growth_(growth.with(aim.loose_limits, aim.cheaper_than.has_value(), !aim.sessions_only)),
        dominance_(chains_, bounds_, aim.cheaper_than.has_value()) {
    for (std::size_t p = 0; p < problem_.products.size(); ++p)
      if (aim.cheaper_than || problem_.products[p].set_up > 0 || problem_.products[p].clean_up > 0)
        relevant_ |= Products{1} << p;
    fronts_.assign(3, Front(dominance_, relevant_));
    if (PartialSchedule first; bounds_.may_meet_deadlines_with_waits(first))
      level().insert(first, work_);
    level_ = level().left();
  }

  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): two limits by its nature
  WindowSearchResult go_on(std::int64_t partials, std::int64_t work) override {
    const std::int64_t before = made_, work_before = work_;
    most_work_ = work > no_limit - work_ ? no_limit : work_ + work;
    while (!ended() && made_ - before < partials) {
      if (level_.empty())
        close_stage();
      else
        extend_level();
    }
    WindowSearchResult result;
    result.ended = ended();
    result.complete = ended() && !left_out_ && work_ < most_work_;
    result.partials = made_ - before;
    result.work = work_ - work_before;
    if (best_) {
      for (std::int32_t t = best_->trace; t >= 0; t = trace_[at(t)].before)
        result.starts.emplace_back(trace_[at(t)].activity, trace_[at(t)].start);
      std::reverse(result.starts.begin(), result.starts.end());
    }
    return result;
  }

 private:
  struct Trace {
    std::int32_t before;
    std::size_t activity;
    Slot start;
  };
  static std::size_t at(std::int32_t trace) { return static_cast<std::size_t>(trace); }

  /// Partial schedules with so much begun in the window, with one activity more, and with the
  /// window closed.
  Front& level() { return fronts_[level_at_]; }
  Front& next_level() { return fronts_[1 - level_at_]; }
  Front& closed() { return fronts_[2]; }

  bool ended() const {
    return work_ >= most_work_ || stage_ == growth_.stages() ||
           (level_.empty() && fronts_[2].is_empty());
  }

  /// Each partial schedule of the level with one activity more, or its window closed.
  void extend_level() {
    next_level().clear();
    for (const std::uint32_t number : level_) {
      if (work_ >= most_work_) return;
      const PartialSchedule& partial = level().partial(number);
      bool may_close = partial.owed == 0;
      for (std::size_t g = 0; g < chains_.size(); ++g)
        if (extend(partial, g, stage_, next_level())) may_close = false;
      if (may_close) close(partial, stage_, closed());
    }
    level_at_ = 1 - level_at_;
    level_ = level().left();
    keep_most_promising(level(), level_, 4 * aim_.beam);
  }

  /// Partial schedules as they stand at the begin of the next window.
  void close_stage() {
    std::swap(level(), closed());
    closed().clear();
    level_ = level().left();
    drop_overtaken(level(), level_);
    keep_most_promising(level(), level_, aim_.beam);
    ++stage_;
  }

  /// Adds the chain's next link where it can start in this stage; true when that does no harm, so
  /// that there is no need to close the window without it.
  bool extend(const PartialSchedule& partial, std::size_t g, std::size_t stage, Front& next) {
    if (partial.done[g] >= chains_[g].size()) return false;
    if (partial.due == no_product) return add(partial, g, stage, next);
    const auto product = problem_.activities[chains_[g][partial.done[g]].activity].product;
    const bool same = product && static_cast<int>(*product) == partial.due;
    const bool one =
        add(growth_.with_due(partial, same ? Due::goes_on : Due::put_off), g, stage, next);
    const bool other = add(growth_.with_due(partial, Due::done_now), g, stage, next);
    return one || other;
  }

  bool add(const PartialSchedule& base, std::size_t g, std::size_t stage, Front& next) {
    const Link& link = chains_[g][base.done[g]];
    Slot from = std::max(base.free, growth_.ready(base, g));
    bool harmless = false;
    const Slot last = std::min(link.last_start[at(growth_.stage_end(stage) - 1)],
                               bounds_.deadline(g, base.done[g]));
    std::uint64_t latest_before = ~std::uint64_t{0};
    while (from <= last) {
      const Slot start = growth_.first_start(base, g, from, stage);
      if (start == never || start > last) break;
      if (base.latest[g][0] > 0 && start > base.latest[g][0]) break;
      const Slot end = link.end[at(start)];
      if (base.owed != 0 && end > problem_.windows[stage].end) break;
      work_ += work_of_growth;
      Grown grown = growth_.add(base, g, start, stage);
      if (limit_of(grown.partial, g) != latest_before)
        harmless = keep(base, grown, g, stage, next) || harmless;
      latest_before = limit_of(grown.partial, g);
      // Waiting only gains time for what must follow soon.
      if (link.limits.empty() || aim_.loose_limits) break;
      from = start + 1;
    }
    return harmless;
  }

  /// Tells limits apart.
  static std::uint64_t limit_of(const PartialSchedule& partial, std::size_t g) {
    constexpr std::uint64_t prime = 1'000'003;
    std::uint64_t sum = 0;  // may wrap
    for (const Slot limit : partial.latest[g])
      sum = sum * prime + static_cast<std::uint64_t>(limit);
    return sum;
  }

  bool keep(const PartialSchedule& base, Grown& grown, std::size_t g, std::size_t stage,
            Front& next) {
    if (grown.too_much_held) {
      left_out_ = true;
      return false;
    }
    const bool harmless = growth_.is_harmless(base, grown, g, stage);
    PartialSchedule& partial = grown.partial;
    if (partial.met > aim_.target || !may_be_good(partial) ||
        !bounds_.may_start(partial, g, base.done[g], grown.start) ||
        !bounds_.may_meet_deadlines(partial))
      return harmless;
    partial.trace = static_cast<std::int32_t>(trace_.size());
    if (next.insert(partial, work_)) {
      ++made_;
      trace_.push_back({base.trace, chains_[g][base.done[g]].activity, grown.start});
    }
    return harmless;
  }

  /// Work that no goal waits for may end windows after the last goal is met, so the first schedule
  /// that is whole need not be the one that is ready soonest.
  bool may_be_good(const PartialSchedule& partial) const {
    if (!aim_.cheaper_than) return !best_ || partial.met < best_->met;
    const Cost least{partial.cost.sessions + bounds_.sessions_to_come(partial), partial.cost.late};
    return least < *aim_.cheaper_than && (!best_ || least < best_->cost);
  }

  void close(const PartialSchedule& partial, std::size_t stage, Front& closed) {
    work_ += work_of_link * static_cast<std::int64_t>(problem_.activities.size());
    PartialSchedule next = growth_.close(partial, stage);
    bool all_done = true;
    for (std::size_t g = 0; g < chains_.size(); ++g)
      all_done = all_done && next.done[g] >= chains_[g].size();
    if (all_done) {
      if (may_be_good(next) &&
          (!best_ || (aim_.cheaper_than ? next.cost < best_->cost : next.met < best_->met)))
        best_ = next;
      return;
    }
    if (stage + 1 == growth_.stages() || !may_be_good(next) ||
        !bounds_.may_meet_deadlines_with_waits(next))
      return;
    closed.insert(next, work_);
  }

  /// Partial schedules that another, further one makes superfluous.
  void drop_overtaken(const Front& front, std::vector<std::uint32_t>& partials) {
    auto progress = [&](std::uint32_t number) {
      int sum = 0;
      for (const std::uint8_t done : front.partial(number).done) sum += done;
      return sum;
    };
    std::stable_sort(partials.begin(), partials.end(),
                     [&](std::uint32_t a, std::uint32_t b) { return progress(a) > progress(b); });
    std::vector<std::uint32_t> left;
    std::vector<std::uint64_t> done;  // of those left, packed, so that most are passed by at once
    for (const std::uint32_t number : partials) {
      const PartialSchedule& partial = front.partial(number);
      const std::uint64_t own = packed(partial);
      const std::size_t compared = std::min<std::size_t>(left.size(), most_compared);
      work_ += static_cast<std::int64_t>(compared / passed_by_at_once);
      bool overtaken = false;
      for (std::size_t i = 0; i < compared && !overtaken; ++i)
        overtaken = is_further(done[i], own) && done[i] != own &&
                    dominance_.as_good_and_further(front.partial(left[i]), partial);
      if (overtaken) continue;
      left.push_back(number);
      done.push_back(own);
    }
    partials = std::move(left);
  }

  static std::uint64_t packed(const PartialSchedule& partial) {
    std::uint64_t done = 0;
    std::memcpy(&done, partial.done.data(), sizeof done);
    return done;
  }

  /// Sessions to spare count like the hours to spare of one more chain. Smaller is more promising.
  double urgency(const PartialSchedule& partial) const {
    const double hours = bounds_.urgency(partial);
    if (!aim_.cheaper_than) return hours;
    const std::int32_t least = partial.cost.sessions + bounds_.sessions_to_come(partial);
    // 0 where the same number is allowed with less late work.
    return hours + 1.0 / std::max(aim_.cheaper_than->sessions - least, 1);
  }

  void keep_most_promising(const Front& front, std::vector<std::uint32_t>& partials,
                           std::size_t most) {
    if (most == 0 || partials.size() <= most) return;
    left_out_ = true;
    std::vector<std::pair<double, std::size_t>> order;
    for (std::size_t i = 0; i < partials.size(); ++i)
      order.emplace_back(urgency(front.partial(partials[i])), i);
    std::sort(order.begin(), order.end());
    std::vector<std::uint32_t> left;
    for (std::size_t i = 0; i < most; ++i) left.push_back(partials[order[i].second]);
    partials = std::move(left);
  }

  static constexpr std::size_t most_compared = 3000;
  /// What adding an activity costs, in partial schedules compared; and how many of these pass by
  /// for the price of one.
  static constexpr std::int64_t work_of_growth = 10;
  static constexpr std::int64_t work_of_link = 2;  ///< when a window is closed
  static constexpr std::size_t passed_by_at_once = 10;

  const SchedulingProblem& problem_;
  const std::vector<Chain>& chains_;
  const SearchAim aim_;
  PartialBounds bounds_;
  PartialGrowth growth_;
  PartialDominance dominance_;
  Products relevant_ = 0;
  std::vector<Front> fronts_;
  std::size_t level_at_ = 0;
  std::vector<std::uint32_t> level_;  ///< numbers of the level's partial schedules
  std::size_t stage_ = 0;
  std::vector<Trace> trace_;
  std::optional<PartialSchedule> best_;
  std::int64_t made_ = 0;
  std::int64_t work_ = 0, most_work_ = no_limit;
  bool left_out_ = false;
};

}  // namespace

WindowSearcher::WindowSearcher(const SchedulingProblem& problem, const std::vector<Chain>& chains)
    : tables_(std::make_shared<const BoundTables>(problem, chains)),
      growth_(problem, chains, false, false) {}

std::unique_ptr<OngoingSearch> WindowSearcher::begin(const SearchAim& aim) const {
  return std::make_unique<Search>(tables_, growth_, aim);
}

}  // namespace tackfree::solver
