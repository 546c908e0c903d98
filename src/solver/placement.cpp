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

SolvedActivity Placement::earliest(std::size_t activity) const {
  SolvedActivity found;
  Slot at = 0;
  if (!start_after_lags(activity, at, found)) return found;
  return problem_.activities[activity].splittable ? earliest_split(activity, at, std::move(found))
                                                  : earliest_whole(activity, at, std::move(found));
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

SolvedActivity Placement::earliest_whole(std::size_t index, Slot at, SolvedActivity found) const {
  const Activity& activity = problem_.activities[index];
  const OpenTime& time = problem_.open_times[activity.open_time];
  while (true) {
    const Slot next = time.next_open(at);
    hold_by_rules(time, {at, std::min(next, time.horizon())}, found);
    if (next == never) return found;
    at = next;
    auto conflict =
        activity.product ? session_conflict(activity, at) : worker_conflict(activity, at);
    if (!conflict) conflict = dust_conflict(activity, at);
    if (!conflict) break;
    at = conflict->next;
    add_hold(found, {.by = conflict->by, .until = at});
  }
  found.pieces = {{at, at + activity.duration}};
  return found;
}

SolvedActivity Placement::earliest_split(std::size_t index, Slot at, SolvedActivity found) const {
  const Activity& activity = problem_.activities[index];
  const OpenTime& time = problem_.open_times[activity.open_time];
  Slot left = activity.duration;
  while (left > 0) {
    const Slot next = time.next_open(at);
    if (found.pieces.empty()) hold_by_rules(time, {at, std::min(next, time.horizon())}, found);
    if (next == never) {
      found.pieces.clear();
      hold_by_rules(time, {at, time.horizon()}, found);
      return found;
    }
    Run run{next, std::min(time.open_until(next), next + left)};
    auto conflict = cut_for_others(run);
    if (!conflict && run.end - run.begin < std::min(left, problem_.shortest_piece))
      conflict = Conflict{Hold::By::window, run.end};
    if (conflict) {
      at = conflict->next;
      if (found.pieces.empty()) add_hold(found, {.by = conflict->by, .until = at});
      continue;
    }
    left -= run.end - run.begin;
    at = run.end;
    if (!found.pieces.empty() && found.pieces.back().end == run.begin)
      found.pieces.back().end = run.end;
    else
      found.pieces.push_back(run);
  }
  return found;
}

/// Shortens a run of splittable work so that it ends before other work or wet boards; a conflict
/// when nothing of it is left.
std::optional<Placement::Conflict> Placement::cut_for_others(Run& run) const {
  for (const Busy& busy : busy_) {
    if (!overlap(busy.run, run)) continue;
    if (busy.run.begin <= run.begin) return Conflict{Hold::By::worker, busy.run.end};
    run.end = busy.run.begin;
  }
  for (const Run wet : wet_) {
    if (run.begin >= wet.end || wet.begin >= run.end + problem_.dust_settles) continue;
    if (wet.begin - problem_.dust_settles <= run.begin) return Conflict{Hold::By::dust, wet.end};
    run.end = wet.begin - problem_.dust_settles;
  }
  return std::nullopt;
}

std::optional<Placement::Conflict> Placement::worker_conflict(const Activity& activity,
                                                              Slot at) const {
  for (const Busy& busy : busy_)
    if (overlap(busy.run, {at, at + activity.duration}))
      return Conflict{Hold::By::worker, busy.run.end};
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
                                                            Slot at) const {
  const Run work{at, at + activity.duration};
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
  for (const Run piece : placed.pieces) {
    busy_.push_back({piece, std::nullopt});
    if (activity.dusty) dusty_.push_back(piece);
  }
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
