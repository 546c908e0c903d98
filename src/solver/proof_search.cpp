#include "tackfree/solver/proof_search.hpp"

#include "tackfree/solver/cut_short.hpp"
#include "tackfree/solver/placement.hpp"
#include "tackfree/solver/serial.hpp"
#include "tackfree/solver/window_search.hpp"

#include <algorithm>
#include <ctime>
#include <memory>
#include <utility>

namespace tackfree::solver {

namespace {

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

/// The same order, with limits kept to the slot.
Solution placed_in_order(const SchedulingProblem& problem,
                         const std::vector<std::pair<std::size_t, Slot>>& starts) {
  std::vector<std::int64_t> priority(problem.activities.size(), 0);
  for (std::size_t n = 0; n < starts.size(); ++n)
    priority[starts[n].first] = static_cast<std::int64_t>(n);
  return placed_by_priority(problem, priority);
}

/// Every slot at which the last goal may be met, in order. Between two of them all targets ask the
/// same.
std::vector<Slot> possible_ready(const SchedulingProblem& problem,
                                 const std::vector<Chain>& chains) {
  std::vector<Slot> possible;
  for (const Chain& chain : chains)
    for (const Link& link : chain)
      for (const std::size_t goal : link.goals)
        for (Slot s = link.next_start[0]; s != never; s = link.next_start[index(s) + 1])
          possible.push_back(problem.tables[goal][index(link.end[index(s)])]);
  std::sort(possible.begin(), possible.end());
  possible.erase(std::unique(possible.begin(), possible.end()), possible.end());
  if (!possible.empty() && possible.back() == never) possible.pop_back();
  return possible;
}

class ProofDriver {
 public:
  /// `cut` is the problem cut short to what a schedule better than `known` may need; `chains` are
  /// made of it.
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): a problem and its shorter form
  ProofDriver(const SchedulingProblem& problem, const SchedulingProblem& cut,
              const std::vector<Chain>& chains, const Solution& known, std::int64_t most_partials,
              std::optional<std::int32_t> most_sessions, Effort& effort)
      : problem_(problem),
        searcher_(cut, chains),
        possible_(possible_ready(cut, chains)),
        left_(most_partials),
        most_sessions_(most_sessions),
        effort_(effort) {
    found_.solution = known;
    for (const Chain& chain : chains)
      found_.ready_bound = std::max(found_.ready_bound, chain.front().tail[0]);
    limits_ = !problem.maximum_lags.empty();
  }

  Searched run(std::int64_t most_partials, Prove prove) {
    if (found_.ready_bound == never || possible_.empty()) {
      found_.infeasible = true;
      return found_;
    }
    raise_bound(found_.ready_bound);
    find_bound(bound_tries_at_once, partials_at_once);
    for (const std::size_t beam : {16U, 64U, 256U, 1024U, 4096U}) {
      look_from_below(beam);
      // What is small is proved sooner than a wider beam helps.
      const std::int64_t made = most_partials - left_;
      prove_ready(limits_ ? 2 * made : made / 2);
    }
    prove_ready(left_ / 2);
    find_bound(bound_tries, left_ / 4);
    if (settled() && whole()) {
      found_.ready_proved = true;
      if (prove == Prove::ready_and_sessions) save_sessions();
    }
    found_.partials = most_partials - left_;
    return found_;
  }

 private:
  bool whole() const {
    const Worth w = worth(problem_, found_.solution);
    return w.unplaced == 0 && w.ready != never;
  }
  Slot ready() const { return worth(problem_, found_.solution).ready; }
  /// The last possible one before what is known.
  Slot target() const { return possible_[last_to_try()]; }
  std::size_t last_to_try() const {
    const auto end =
        whole() ? std::lower_bound(possible_.begin(), possible_.end(), ready()) : possible_.end();
    return static_cast<std::size_t>(std::max(end - possible_.begin(), std::ptrdiff_t{1}) - 1);
  }
  std::size_t first_to_try() const {
    const auto at = std::lower_bound(possible_.begin(), possible_.end(), found_.ready_bound);
    return std::min(static_cast<std::size_t>(at - possible_.begin()), possible_.size() - 1);
  }
  /// No schedule is ready before this slot, and so before the next possible one.
  void raise_bound(Slot bound) {
    const auto at = std::lower_bound(possible_.begin(), possible_.end(), bound);
    found_.ready_bound = std::max(found_.ready_bound, at == possible_.end() ? bound : *at);
  }
  bool settled() const { return found_.infeasible || (whole() && found_.ready_bound >= ready()); }

  /// A search that keeps all goes on where the last one stopped, if it looks for the same.
  WindowSearchResult search(SearchAim aim, std::int64_t most_partials) {
    if (most_sessions_ && !aim.cheaper_than) {
      aim.cheaper_than = Cost{*most_sessions_ + 1, 0};
      aim.sessions_only = true;
    }
    if (effort_.left <= 0) left_ = 0;
    const std::int64_t most = std::max(std::min(most_partials, left_), std::int64_t{0});
    WindowSearchResult result;
    if (aim.beam > 0) {
      result = searcher_.begin(aim)->go_on(most, effort_.left);
    } else {
      if (!ongoing_ || !(ongoing_aim_ == aim)) {
        ongoing_ = searcher_.begin(aim);
        ongoing_aim_ = aim;
      }
      result = ongoing_->go_on(most, effort_.left);
      if (result.ended) ongoing_.reset();
    }
    left_ -= result.partials;
    effort_.left -= result.work;
    return result;
  }

  /// Takes what was found if it is better, kept to every rule.
  bool take(const WindowSearchResult& result, bool loose) {
    if (result.starts.empty()) return false;
    Solution candidate =
        loose ? placed_in_order(problem_, result.starts) : solution_of(problem_, result.starts);
    const Worth w = worth(problem_, candidate);
    if (most_sessions_ && w.sessions > static_cast<std::size_t>(*most_sessions_)) return false;
    if (!(w < worth(problem_, found_.solution))) return false;
    found_.solution = std::move(candidate);
    return true;
  }

  /// Near targets leave little choice, and so a beam goes astray less; the far ones come last. When
  /// two targets fail after as many partial schedules, those between the second and the last one do
  /// too.
  void look_from_below(std::size_t beam) {
    std::optional<Slot> tried;
    std::int64_t made_before = 0;
    for (int halvings = most_halvings; halvings >= 0 && !settled();) {
      const std::size_t first = first_to_try();
      const Slot next = possible_[first + ((last_to_try() - first) >> halvings)];
      const std::int64_t left_before = left_;
      const bool better = next != tried && improve(next, beam, left_ / 4);
      if (const std::int64_t made = left_before - left_; !better && made > 0) {
        if (made == made_before) halvings = std::min(halvings, 1);
        made_before = made;
      }
      tried = next;
      if (!better) --halvings;
    }
  }

  bool improve(Slot aimed_at, std::size_t beam, std::int64_t partials) {
    SearchAim aim{.target = aimed_at, .beam = beam, .loose_limits = limits_};
    WindowSearchResult result = search(aim, partials);
    if (refuted(result, aim)) return false;
    if (take(result, limits_)) return true;
    // What is not ended with loose limits will not be with exact ones.
    if (!limits_ || (beam == 0 && !result.ended)) return false;
    aim.loose_limits = false;
    result = search(aim, partials);
    return !refuted(result, aim) && take(result, false);
  }

  bool refuted(const WindowSearchResult& result, const SearchAim& aim) {
    if (!result.complete || !result.starts.empty()) return false;
    if (aim.target >= target()) {
      if (whole())
        found_.ready_bound = ready();
      else
        found_.infeasible = true;
    } else {
      raise_bound(aim.target + 1);
    }
    return true;
  }

  /// Within so many partial schedules, looks for the soonest that is not refuted, since what is
  /// soonest has least to be tried; each time that is refuted too, for what is four times as much
  /// later. Without a schedule it looks for any; where limits leave little choice, for anything
  /// sooner than what is known.
  void prove_ready(std::int64_t most) {
    const std::int64_t spared = left_ - most;
    while (!settled() && left_ > spared) {
      const std::size_t last = last_to_try();
      const bool from_below = whole() && !limits_;
      const std::size_t next = from_below ? std::min(first_to_try() + stride_, last) : last;
      const Slot bound = found_.ready_bound;
      const bool better = improve(possible_[next], 0, left_ - spared);
      const bool raised = found_.ready_bound > bound;
      if (!better && !raised) return;
      stride_ = raised ? 4 * stride_ + 3 : 0;
    }
  }

  /// Where the limit does not suffice for a proof, at least a good bound: is anything ready much
  /// sooner?
  void find_bound(int most_tries, std::int64_t partials) {
    std::size_t open = last_to_try();
    for (int tries = 0; tries < most_tries && !settled() && left_ > 0; ++tries) {
      const std::size_t first = first_to_try();
      const std::size_t middle = first + (open - first) / 2;
      if (middle >= open) break;
      const SearchAim aim{.target = possible_[middle], .loose_limits = limits_};
      const WindowSearchResult result = search(aim, partials);
      if (!refuted(result, aim)) {
        open = middle;
        if (take(result, limits_)) open = std::min(open, last_to_try());
      }
    }
  }

  Cost cost() const {
    const Worth w = worth(problem_, found_.solution);
    return {static_cast<std::int32_t>(w.sessions), w.late};
  }

  /// Fewest sessions, then least late work, among what is ready as soon. That no schedule has fewer
  /// sessions is proved without late work; the least of that only if it takes a quarter as long.
  void save_sessions() {
    const std::int64_t before = left_;
    const SearchAim aim{.sessions_only = true};
    bool proved = false;
    for (const std::size_t beam : {64U, 256U, 1024U}) {
      lower_cost({.beam = beam}, left_ / 8);
      proved = lower_cost(aim, 2 * (before - left_));
      if (proved) break;
    }
    if (!proved) proved = lower_cost(aim, left_);
    found_.sessions_proved = proved;
    if (proved && !problem_.late.empty()) lower_cost({}, std::min(left_, (before - left_) / 4));
  }

  /// Looks for anything cheaper until there is nothing; false when that is not sure.
  bool lower_cost(SearchAim aim, std::int64_t most_partials) {
    aim.target = ready();
    for (const bool loose : {true, false}) {
      if (loose && !limits_) continue;
      aim.loose_limits = loose;
      while (left_ > 0) {
        aim.cheaper_than = cost();
        if (aim.sessions_only) aim.cheaper_than->late = 0;
        const WindowSearchResult result = search(aim, most_partials);
        const bool better = take(result, loose);
        if (!result.complete) return false;
        if (result.starts.empty()) return true;
        if (!better || !aim.sessions_only) {
          // The cheapest there is, unless limits were loose.
          if (loose) break;
          return true;
        }
      }
    }
    return false;
  }

  static constexpr int bound_tries = 6;
  /// What little search refutes is refuted before anything else.
  static constexpr int bound_tries_at_once = 12;
  static constexpr std::int64_t partials_at_once = 100;
  static constexpr int most_halvings = 5;

  const SchedulingProblem& problem_;
  WindowSearcher searcher_;
  std::unique_ptr<OngoingSearch> ongoing_;
  SearchAim ongoing_aim_;
  std::vector<Slot> possible_;
  std::int64_t left_;
  std::size_t stride_ = 0;  ///< from the soonest that is not refuted to what is looked for
  bool limits_ = false;
  std::optional<std::int32_t> most_sessions_;
  Effort& effort_;
  Searched found_;
};

}  // namespace

std::optional<Searched> best_schedule(const SchedulingProblem& problem, const Solution& known,
                                      std::int64_t most_partials, std::size_t most_sessions,
                                      Prove prove, Effort* effort) {
  const Worth first = worth(problem, known);
  const bool whole = first.unplaced == 0 && first.ready != never && first.sessions <= most_sessions;
  Solution nothing;
  nothing.activities.resize(problem.activities.size());
  const SchedulingProblem cut =
      cut_short(problem, whole ? horizon_for(problem, first.ready) : problem.horizon);
  const auto chains = chains_of(cut);
  if (!chains) return std::nullopt;
  const auto most = most_sessions <= problem.activities.size()
                        ? std::optional(static_cast<std::int32_t>(most_sessions))
                        : std::nullopt;
  Effort own;
  return ProofDriver(problem, cut, *chains, most && !whole ? nothing : known, most_partials, most,
                     effort != nullptr ? *effort : own)
      .run(most_partials, prove);
}

}  // namespace tackfree::solver
