#include "tackfree/solver/placement.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace tackfree::solver {

namespace {

/// Adds a hold; an older one of the same kind gives way, so that the list stays short.
void add_hold(SolvedActivity& found, Hold hold) {
  std::erase_if(found.holds, [&](const Hold& old) {
    return old.by == hold.by && old.rule == hold.rule && old.lag == hold.lag;
  });
  found.holds.push_back(hold);
}

}  // namespace

Placement::Placement(const SchedulingProblem& problem)
    : problem_(problem),
      lags_to_(problem.activities.size()),
      done_(problem.activities.size(), false) {
  for (std::size_t i = 0; i < problem.lags.size(); ++i) lags_to_[problem.lags[i].to].push_back(i);
  solution_.activities.resize(problem.activities.size());
}

bool Placement::is_eligible(std::size_t activity) const {
  return !done_[activity] &&
         std::all_of(lags_to_[activity].begin(), lags_to_[activity].end(),
                     [&](std::size_t lag) { return done_[problem_.lags[lag].from]; });
}

SolvedActivity Placement::earliest(std::size_t index, Slot not_before) const {
  SolvedActivity found;
  Slot at = 0;
  if (!start_after_lags(index, at, found)) return found;
  at = std::max(at, not_before);
  const Activity& activity = problem_.activities[index];
  const OpenTime& time = problem_.open_times[activity.open_time];
  while (true) {
    const Slot next = time.next_open(at);
    hold_by_rules(time, {at, std::min(next, time.horizon())}, found);
    if (next == never) return found;
    at = next;
    const std::vector<Run> pieces = pieces_from(problem_, activity, at);
    auto conflict =
        pieces.empty() ? Conflict{Hold::By::window, at + 1} : conflict_of(activity, pieces);
    if (!conflict) {
      found.pieces = pieces;
      return found;
    }
    at = conflict->next;
    add_hold(found, {.by = conflict->by, .until = at});
  }
}

std::optional<Placement::Conflict> Placement::conflict_of(const Activity& activity,
                                                          const std::vector<Run>& pieces) const {
  const Run whole{pieces.front().begin, pieces.back().end};
  auto conflict =
      activity.product ? session_conflict(activity, whole.begin) : worker_conflict(whole);
  for (const Run piece : pieces)
    if (!conflict) conflict = dust_conflict(activity, piece);
  return conflict;
}

/// Moves `at` past every lag; false when one of them is never over.
bool Placement::start_after_lags(std::size_t activity, Slot& at, SolvedActivity& found) const {
  for (const std::size_t index : lags_to_[activity]) {
    const Lag& lag = problem_.lags[index];
    const SolvedActivity& from = solution_.activities[lag.from];
    Slot ready = never;
    if (from.placed()) {
      ready = lag.table ? problem_.tables[*lag.table][static_cast<std::size_t>(from.end())]
                        : from.end();
    }
    if (ready == never) {
      found.holds = {Hold{.by = Hold::By::lag, .until = never, .lag = index}};
      return false;
    }
    ready += lag.delay;
    if (ready > at) {
      at = ready;
      found.holds = {Hold{.by = Hold::By::lag, .until = ready, .lag = index}};
    }
  }
  return true;
}

/// The worker is taken for all of `whole`: split work goes on before anything else is begun.
std::optional<Placement::Conflict> Placement::worker_conflict(Run whole) const {
  for (const Busy& busy : busy_)
    if (overlap(busy.run, whole)) return Conflict{Hold::By::worker, busy.run.end};
  return std::nullopt;
}

/// Room for the activity and for the set-up and clean-up of its session, new or widened.
std::optional<Placement::Conflict> Placement::session_conflict(const Activity& activity,
                                                               Slot at) const {
  const auto window = window_at(problem_, at);
  if (!window) return Conflict{Hold::By::window, at + 1};
  const Run open = problem_.windows[*window];
  const Product& product = problem_.products[*activity.product];
  const auto session = session_in(*activity.product, *window);
  const Run work{at, at + activity.duration};
  Run coats = work;
  if (session) {
    const Run old = solution_.sessions[*session].coats;
    coats = {std::min(old.begin, work.begin), std::max(old.end, work.end)};
  }
  const Run set_up{coats.begin - product.set_up, coats.begin};
  const Run clean_up{coats.end, coats.end + product.clean_up};
  if (set_up.begin < open.begin)
    return Conflict{Hold::By::window,
                    std::max(at + 1, std::min(open.begin + product.set_up, open.end))};
  if (clean_up.end > open.end) return Conflict{Hold::By::window, open.end};
  for (const Busy& busy : busy_) {
    if (session && busy.session == session) continue;
    if (overlap(busy.run, work)) return Conflict{Hold::By::worker, busy.run.end};
    if (overlap(busy.run, set_up) || overlap(busy.run, clean_up))
      return Conflict{Hold::By::worker, at + 1};
  }
  return std::nullopt;
}

std::optional<Placement::Conflict> Placement::dust_conflict(const Activity& activity,
                                                            Run work) const {
  if (activity.dusty)
    for (const Run wet : wet_)
      if (work.begin < wet.end && wet.begin < work.end + problem_.dust_settles)
        return Conflict{Hold::By::dust, wet.end};
  if (activity.wet_until) {
    const Run wet{work.begin,
                  problem_.tables[*activity.wet_until][static_cast<std::size_t>(work.end)]};
    for (const Run dusty : dusty_)
      if (dusty.begin < wet.end && wet.begin < dusty.end + problem_.dust_settles)
        return Conflict{Hold::By::dust, dusty.end + problem_.dust_settles};
  }
  return std::nullopt;
}

std::optional<std::size_t> Placement::session_in(std::size_t product, std::size_t window) const {
  for (std::size_t i = 0; i < solution_.sessions.size(); ++i)
    if (solution_.sessions[i].product == product && solution_.sessions[i].window == window)
      return i;
  return std::nullopt;
}

void Placement::place(std::size_t index, SolvedActivity found) {
  done_[index] = true;
  solution_.activities[index] = std::move(found);
  const SolvedActivity& placed = solution_.activities[index];
  if (!placed.placed()) return;
  const Activity& activity = problem_.activities[index];
  busy_.push_back({{placed.begin(), placed.end()}, std::nullopt});
  if (activity.dusty) dusty_.insert(dusty_.end(), placed.pieces.begin(), placed.pieces.end());
  if (activity.wet_until)
    wet_.push_back({placed.begin(),
                    problem_.tables[*activity.wet_until][static_cast<std::size_t>(placed.end())]});
  if (activity.product) join_session(index);
}

void Placement::join_session(std::size_t index) {
  const std::size_t product = *problem_.activities[index].product;
  const SolvedActivity& placed = solution_.activities[index];
  const std::size_t window = window_at(problem_, placed.begin()).value();
  auto session = session_in(product, window);
  if (!session) {
    session = solution_.sessions.size();
    solution_.sessions.push_back({product, window, {placed.begin(), placed.end()}, {}});
  }
  SolvedSession& joined = solution_.sessions[*session];
  joined.activities.push_back(index);
  joined.coats = {std::min(joined.coats.begin, placed.begin()),
                  std::max(joined.coats.end, placed.end())};
  std::erase_if(busy_, [&](const Busy& busy) { return busy.session == session; });
  const Product& rules = problem_.products[product];
  busy_.push_back({{joined.coats.begin - rules.set_up, joined.coats.begin}, session});
  busy_.push_back({{joined.coats.end, joined.coats.end + rules.clean_up}, session});
}

/// Notes the rules that close `time` over `closed_run`, each with the slot where it last
/// ends; the one that closes most slots comes last when the time never opens again.
void Placement::hold_by_rules(const OpenTime& time, Run closed_run, SolvedActivity& found) const {
  std::map<Rule, std::pair<Slot, Slot>> closed;  // rule: last end, slots in windows
  for (Slot slot = std::max(closed_run.begin, Slot{0}); slot < closed_run.end; ++slot) {
    auto& [last, count] = closed[time.rule(slot)];
    last = slot + 1;
    if (window_at(problem_, slot)) ++count;
  }
  std::vector<std::pair<Rule, std::pair<Slot, Slot>>> rules(closed.begin(), closed.end());
  const bool forever = closed_run.end >= time.horizon();
  std::sort(rules.begin(), rules.end(), [&](const auto& a, const auto& b) {
    return forever ? a.second.second < b.second.second : a.second.first < b.second.first;
  });
  for (const auto& [rule, ends] : rules)
    if (rule != no_rule)
      add_hold(found, {.by = Hold::By::rule, .until = forever ? never : ends.first, .rule = rule});
}

}  // namespace tackfree::solver
