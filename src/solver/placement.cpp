#include "tackfree/solver/placement.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace tackfree::solver {

namespace {

/// Adds a hold; an older one of the same kind gives way, so that the list stays short.
void add_hold(SolvedActivity& found, Hold hold) {
  std::erase_if(found.holds, [&](const Hold& old) {
    return old.by == hold.by && old.rule == hold.rule && old.lag == hold.lag &&
           old.resource == hold.resource;
  });
  found.holds.push_back(hold);
}

}  // namespace

Placement::Placement(const SchedulingProblem& problem)
    : problem_(problem),
      lags_to_(problem.activities.size()),
      maximum_lags_of_(problem.activities.size()),
      done_(problem.activities.size(), false),
      held_(problem.resources.size()) {
  for (std::size_t i = 0; i < problem.lags.size(); ++i) lags_to_[problem.lags[i].to].push_back(i);
  for (std::size_t i = 0; i < problem.maximum_lags.size(); ++i) {
    maximum_lags_of_[problem.maximum_lags[i].from].push_back(i);
    maximum_lags_of_[problem.maximum_lags[i].to].push_back(i);
  }
  for (const Standing& held : problem.standing)
    held_[held.resource].push_back({{0, held.until}, held.amount});
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
    // A later start in the same stretch has a shorter first piece, and less time for them all.
    const Slot elsewhere = activity.splittable ? time.open_until(at) : at + 1;
    auto conflict =
        pieces.empty() ? Conflict{Hold::By::window, elsewhere} : conflict_of(index, pieces);
    if (!conflict) {
      found.pieces = pieces;
      return found;
    }
    // A start that comes too late tells how late, for a repair.
    Hold hold{.by = conflict->by, .until = conflict->next == never ? at : conflict->next};
    at = conflict->next;
    if (hold.by == Hold::By::resource) hold.resource = conflict->which;
    if (hold.by == Hold::By::maximum_lag) hold.lag = conflict->which;
    add_hold(found, hold);
    if (at == never) return found;
  }
}

std::optional<Placement::Conflict> Placement::conflict_of(std::size_t index,
                                                          const std::vector<Run>& pieces) const {
  const Activity& activity = problem_.activities[index];
  const Run whole{pieces.front().begin, pieces.back().end};
  auto conflict = maximum_lag_conflict(index, whole);
  if (!conflict && activity.product) conflict = session_conflict(activity, whole.begin);
  if (!conflict && !activity.product && activity.workers > 0)
    conflict = worker_conflict(whole, std::nullopt);
  for (const Run piece : pieces)
    if (!conflict) conflict = dust_conflict(activity, piece);
  if (!conflict) conflict = resource_conflict(activity, whole);
  return conflict;
}

/// Moves `at` past every lag; false when one of them is never over.
bool Placement::start_after_lags(std::size_t index, Slot& at, SolvedActivity& found) const {
  for (const std::size_t number : lags_to_[index]) {
    const Lag& lag = problem_.lags[number];
    const SolvedActivity& from = solution_.activities[lag.from];
    const Slot ready = from.placed() ? after(problem_, lag, from.end()) : never;
    if (ready == never) {
      found.holds = {Hold{.by = Hold::By::lag, .until = never, .lag = number}};
      return false;
    }
    if (ready > at) {
      at = ready;
      found.holds = {Hold{.by = Hold::By::lag, .until = ready, .lag = number}};
    }
  }
  return true;
}

/// Too late after what is placed: never. Too soon before it: later.
std::optional<Placement::Conflict> Placement::maximum_lag_conflict(std::size_t index,
                                                                   Run work) const {
  for (const std::size_t number : maximum_lags_of_[index]) {
    const MaximumLag& lag = problem_.maximum_lags[number];
    const SolvedActivity& other = solution_.activities[lag.from == index ? lag.to : lag.from];
    if (!other.placed()) continue;
    if (lag.to == index && work.begin > after(problem_, lag, other.end()))
      return Conflict{Hold::By::maximum_lag, never, number};
    if (lag.from == index && other.begin() > after(problem_, lag, work.end))
      return Conflict{Hold::By::maximum_lag, work.begin + 1, number};
  }
  return std::nullopt;
}

/// A worker is taken for all of `whole`: split work goes on before anything else is begun.
std::optional<Placement::Conflict> Placement::worker_conflict(
    Run whole, std::optional<std::size_t> session) const {
  if (whole.begin >= whole.end) return std::nullopt;
  std::vector<Run> taken;
  for (auto away = std::ranges::upper_bound(problem_.away, whole.begin, {}, &Run::end);
       away != problem_.away.end() && away->begin < whole.end; ++away)
    taken.push_back(*away);
  for (const Busy& busy : busy_)
    if (overlap(busy.run, whole) && !(session && busy.session == session))
      taken.push_back(busy.run);
  for (const Run at : taken) {
    const Slot from = std::max(at.begin, whole.begin);
    int count = 0;
    Slot next = never;
    for (const Run run : taken)
      if (run.begin <= from && from < run.end) {
        ++count;
        next = std::min(next, run.end);
      }
    if (count >= problem_.workers) return Conflict{Hold::By::worker, next};
  }
  return std::nullopt;
}

/// Room for the activity and for the set-up and clean-ups of its session, new or widened.
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
  if (auto conflict = worker_conflict(work, session)) return conflict;
  if (worker_conflict(set_up, session) || worker_conflict(clean_up, session))
    return Conflict{Hold::By::worker, at + 1};
  if (!session) return std::nullopt;
  std::vector<Run> uses{used(activity, at)};
  append_uses(*session, uses);
  for (const Run cleaning : cleanings(product, std::move(uses)))
    if (overlap(cleaning, work) || worker_conflict(cleaning, session))
      return Conflict{Hold::By::worker, at + 1};
  return std::nullopt;
}

/// When the session's activities use its product.
void Placement::append_uses(std::size_t session, std::vector<Run>& uses) const {
  for (const std::size_t other : solution_.sessions[session].activities)
    uses.push_back(used(problem_.activities[other], solution_.activities[other].begin()));
}

std::optional<Placement::Conflict> Placement::dust_conflict(const Activity& activity,
                                                            Run work) const {
  if (activity.dusty)
    for (const Taken& wet : wet_)
      if (disturbs(activity, problem_.activities[wet.activity]) && work.begin < wet.run.end &&
          wet.run.begin < work.end + problem_.dust_settles)
        return Conflict{Hold::By::dust, wet.run.end};
  if (activity.wet_until) {
    const Run wet{work.begin,
                  problem_.tables[*activity.wet_until][static_cast<std::size_t>(work.end)]};
    for (const Taken& dusty : dusty_)
      if (disturbs(problem_.activities[dusty.activity], activity) && dusty.run.begin < wet.end &&
          wet.begin < dusty.run.end + problem_.dust_settles)
        return Conflict{Hold::By::dust, dusty.run.end + problem_.dust_settles};
  }
  return std::nullopt;
}

/// The use is greatest where something begins, so only those slots are looked at.
std::optional<Placement::Conflict> Placement::resource_conflict(const Activity& activity,
                                                                Run work) const {
  for (const Use& use : activity.uses) {
    const Run run = held(problem_, use, work);
    if (run.begin >= run.end) continue;
    const auto& others = held_[use.resource];
    auto over = [&](Slot at) {
      int used = use.amount;
      Slot next = never;
      for (const Held& other : others)
        if (other.run.begin <= at && at < other.run.end) {
          used += other.amount;
          next = std::min(next, other.run.end);
        }
      return used > problem_.resources[use.resource] ? std::optional(next) : std::nullopt;
    };
    auto next = over(run.begin);
    for (const Held& other : others)
      if (!next && overlap(other.run, run)) next = over(std::max(other.run.begin, run.begin));
    if (next) return Conflict{Hold::By::resource, *next, use.resource};
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
  const Run work{placed.begin(), placed.end()};
  if (activity.workers > 0) busy_.push_back({work, std::nullopt});
  if (activity.dusty)
    for (const Run piece : placed.pieces) dusty_.push_back({piece, index});
  if (activity.wet_until)
    wet_.push_back(
        {{work.begin, problem_.tables[*activity.wet_until][static_cast<std::size_t>(work.end)]},
         index});
  for (const Use& use : activity.uses)
    held_[use.resource].push_back({held(problem_, use, work), use.amount});
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
  std::vector<Run> uses;
  append_uses(*session, uses);
  std::vector<Run> around = cleanings(rules, std::move(uses));
  around.push_back({joined.coats.begin - rules.set_up, joined.coats.begin});
  around.push_back({joined.coats.end, joined.coats.end + rules.clean_up});
  for (const Run each : around)
    if (each.begin < each.end) busy_.push_back({each, session});
}

/// Notes the rules that close `time` over `closed_run`, each with the slot where it last
/// ends; the one that closes most slots comes last when the time never opens again.
void Placement::hold_by_rules(const OpenTime& time, Run closed_run, SolvedActivity& found) const {
  struct Closed {
    Rule rule;
    Slot last;        ///< where it last ends
    Slot in_windows;  ///< slots that it closes there
  };
  std::vector<Closed> rules;
  const Slot begin = std::max(closed_run.begin, Slot{0});
  auto window = std::ranges::upper_bound(problem_.windows, begin, {}, &Run::end);
  for (Slot slot = begin; slot < closed_run.end;) {
    const Slot end = std::min(time.same_rule_until(slot), closed_run.end);
    auto closed = std::ranges::find(rules, time.rule(slot), &Closed::rule);
    if (closed == rules.end()) closed = rules.insert(closed, Closed{time.rule(slot), 0, 0});
    closed->last = end;
    for (; window != problem_.windows.end() && window->begin < end; ++window) {
      closed->in_windows += std::min(window->end, end) - std::max(window->begin, slot);
      if (window->end > end) break;
    }
    slot = end;
  }
  std::ranges::sort(rules, {}, &Closed::rule);
  const bool forever = closed_run.end >= time.horizon();
  std::ranges::stable_sort(rules, {}, forever ? &Closed::in_windows : &Closed::last);
  for (const Closed& closed : rules)
    if (closed.rule != no_rule)
      add_hold(found,
               {.by = Hold::By::rule, .until = forever ? never : closed.last, .rule = closed.rule});
}

}  // namespace tackfree::solver
