#include "bench/check.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace tackfree::solver {

namespace {

/// A slot by slot account of the schedule: plain loops, no clever bounds.
class Account {
 public:
  Account(const SchedulingProblem& problem, const Solution& solution)
      : problem_(problem), solution_(solution) {}

  std::vector<std::string> broken() {
    for (std::size_t i = 0; i < solution_.activities.size(); ++i)
      if (solution_.activities[i].placed()) check_pieces(i);
    for (std::size_t i = 0; i < problem_.lags.size(); ++i) check_lag(i);
    for (std::size_t i = 0; i < problem_.maximum_lags.size(); ++i) check_maximum_lag(i);
    check_sessions();
    check_workers();
    for (std::size_t i = 0; i < problem_.resources.size(); ++i) check_resource(i);
    check_dust();
    return std::move(broken_);
  }

 private:
  template <class... Values>
  void say(fmt::format_string<Values...> text, Values&&... values) {
    broken_.push_back(fmt::format(text, std::forward<Values>(values)...));
  }

  void check_pieces(std::size_t i) {
    const Activity& activity = problem_.activities[i];
    const auto& pieces = solution_.activities[i].pieces;
    const OpenTime& time = problem_.open_times[activity.open_time];
    Slot done = 0;
    for (std::size_t p = 0; p < pieces.size(); ++p) {
      done += pieces[p].end - pieces[p].begin;
      if (pieces[p].begin < 0 || pieces[p].end > problem_.horizon)
        say("activity {} leaves the horizon", i);
      if (p > 0 && time.next_open(pieces[p - 1].end) != pieces[p].begin)
        say("activity {} does not go on as soon as it can", i);
      if (p > 0 && pieces[p].begin < pieces[p - 1].end)
        say("activity {} has pieces out of order", i);
      if (activity.splittable)
        for (Slot s = pieces[p].begin; s < pieces[p].end; ++s)
          if (!time.is_open(s)) say("activity {} runs at closed slot {}", i, s);
    }
    if (done != activity.duration)
      say("activity {} takes {} slots, not {}", i, done, activity.duration);
    if (!activity.splittable) {
      if (pieces.size() != 1) say("activity {} is split", i);
      if (!time.is_open(pieces.front().begin))
        say("activity {} starts at closed slot {}", i, pieces.front().begin);
    }
  }

  void check_lag(std::size_t index) {
    const Lag& lag = problem_.lags[index];
    const SolvedActivity& from = solution_.activities[lag.from];
    const SolvedActivity& to = solution_.activities[lag.to];
    if (!to.placed()) return;
    if (!from.placed()) {
      say("activity {} is placed without {}", lag.to, lag.from);
      return;
    }
    const Slot end = from.end();
    const Slot ready = lag.table ? problem_.tables[*lag.table][static_cast<std::size_t>(end)] : end;
    if (ready == never || to.begin() < ready + lag.delay)
      say("activity {} starts at {} before lag {} is over", lag.to, to.begin(), index);
  }

  void check_maximum_lag(std::size_t index) {
    const MaximumLag& lag = problem_.maximum_lags[index];
    const SolvedActivity& from = solution_.activities[lag.from];
    const SolvedActivity& to = solution_.activities[lag.to];
    if (!from.placed() || !to.placed()) return;
    Slot latest = from.end();
    if (lag.table) latest = problem_.tables[*lag.table][static_cast<std::size_t>(latest)];
    if (latest != never && to.begin() > latest + lag.delay)
      say("activity {} starts at {} after maximum lag {} is over", lag.to, to.begin(), index);
  }

  /// Capacity is a question at each start only: between starts the use does not grow.
  void check_resource(std::size_t resource) {
    std::vector<std::pair<Run, int>> uses, standing;
    for (const Standing& held : problem_.standing)
      if (held.resource == resource) standing.push_back({{0, held.until}, held.amount});
    for (std::size_t i = 0; i < solution_.activities.size(); ++i) {
      if (!solution_.activities[i].placed()) continue;
      for (const Use& use : problem_.activities[i].uses) {
        if (use.resource != resource) continue;
        Slot until = solution_.activities[i].end();
        if (use.held_until)
          until = problem_.tables[*use.held_until][static_cast<std::size_t>(until)];
        uses.push_back({{solution_.activities[i].begin(), until}, use.amount});
      }
    }
    for (const auto& [run, amount] : uses) {
      int used = 0;
      for (const auto* held : {&uses, &standing})
        for (const auto& [other, other_amount] : *held)
          if (other.begin <= run.begin && run.begin < other.end) used += other_amount;
      if (used > problem_.resources[resource] && run.begin < run.end)
        say("{} of resource {} are used at slot {}, of {}", used, resource, run.begin,
            problem_.resources[resource]);
    }
  }

  void check_sessions() {
    std::map<std::pair<std::size_t, std::size_t>, Run> coats;  // by product and window
    for (std::size_t i = 0; i < solution_.activities.size(); ++i) {
      const auto product = problem_.activities[i].product;
      const SolvedActivity& solved = solution_.activities[i];
      if (!product || !solved.placed()) continue;
      std::size_t window = problem_.windows.size();
      for (std::size_t w = 0; w < problem_.windows.size(); ++w)
        if (problem_.windows[w].begin <= solved.begin() && solved.end() <= problem_.windows[w].end)
          window = w;
      if (window == problem_.windows.size()) say("activity {} is not inside one window", i);
      auto [place, fresh] =
          coats.try_emplace({*product, window}, Run{solved.begin(), solved.end()});
      place->second.begin = std::min(place->second.begin, solved.begin());
      place->second.end = std::max(place->second.end, solved.end());
    }
    if (coats.size() != solution_.sessions.size())
      say("{} sessions are listed, {} are needed", solution_.sessions.size(), coats.size());
    for (const auto& [key, coated] : coats) {
      const std::size_t product = key.first, window = key.second;
      const Run run = coated;
      if (window == problem_.windows.size()) continue;
      const Run set_up{run.begin - problem_.products[product].set_up, run.begin};
      const Run clean_up{run.end, run.end + problem_.products[product].clean_up};
      if (set_up.begin < problem_.windows[window].begin ||
          clean_up.end > problem_.windows[window].end)
        say("the session of product {} does not fit window {}", product, window);
      extra_.push_back(set_up);
      extra_.push_back(clean_up);
      const bool listed = std::any_of(
          solution_.sessions.begin(), solution_.sessions.end(), [&](const SolvedSession& s) {
            return s.product == product && s.window == window && s.coats == run;
          });
      if (!listed)
        say("the session of product {} in window {} is not listed as it is", product, window);
    }
  }

  void check_workers() {
    std::vector<Run> work = extra_;
    work.insert(work.end(), problem_.away.begin(), problem_.away.end());
    for (std::size_t i = 0; i < solution_.activities.size(); ++i)
      if (solution_.activities[i].placed() && problem_.activities[i].workers > 0)
        work.push_back({solution_.activities[i].begin(), solution_.activities[i].end()});
    std::map<Slot, int> busy;
    for (const Run run : work)
      for (Slot s = run.begin; s < run.end; ++s)
        if (++busy[s] == problem_.workers + 1)
          say("{} workers do more things at once at slot {}", problem_.workers, s);
  }

  void check_dust() {
    for (std::size_t d = 0; d < solution_.activities.size(); ++d) {
      if (!problem_.activities[d].dusty) continue;
      for (const Run piece : solution_.activities[d].pieces)
        for (std::size_t w = 0; w < solution_.activities.size(); ++w) check_dust_on(d, piece, w);
    }
  }

  void check_dust_on(std::size_t d, Run piece, std::size_t w) {
    const SolvedActivity& wet = solution_.activities[w];
    const Activity& maker = problem_.activities[d];
    const Activity& taker = problem_.activities[w];
    if (!taker.wet_until || !wet.placed() || taker.room != maker.room) return;
    if (maker.family && taker.family && *maker.family == *taker.family) return;
    const Slot dry = problem_.tables[*taker.wet_until][static_cast<std::size_t>(wet.end())];
    const bool settled = piece.end + problem_.dust_settles <= wet.begin();
    if (!settled && piece.begin < dry) say("dust of activity {} falls on activity {}", d, w);
  }

  const SchedulingProblem& problem_;
  const Solution& solution_;
  std::vector<Run> extra_;
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> violations(const SchedulingProblem& problem, const Solution& solution) {
  return Account(problem, solution).broken();
}

}  // namespace tackfree::solver
