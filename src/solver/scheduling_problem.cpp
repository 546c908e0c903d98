#include "tackfree/solver/scheduling_problem.hpp"

#include <algorithm>

namespace tackfree::solver {

namespace {

Slot late_slots(const SchedulingProblem& problem, Run work) {
  Slot sum = 0;
  for (const Run late : problem.late)
    if (overlap(late, work)) sum += std::min(late.end, work.end) - std::max(late.begin, work.begin);
  return sum;
}

}  // namespace

Worth worth(const SchedulingProblem& problem, const Solution& solution) {
  Worth result;
  result.sessions = solution.sessions.size();
  for (const SolvedActivity& activity : solution.activities) {
    if (!activity.placed()) {
      ++result.unplaced;
      continue;
    }
    result.sum_of_starts += activity.begin();
    for (const Run piece : activity.pieces) result.late += late_slots(problem, piece);
  }
  for (const SolvedSession& session : solution.sessions) {
    const Product& product = problem.products[session.product];
    result.late += late_slots(problem, {session.coats.begin - product.set_up, session.coats.begin});
    result.late += late_slots(problem, {session.coats.end, session.coats.end + product.clean_up});
  }
  for (const Goal& goal : problem.goals) {
    const SolvedActivity& activity = solution.activities[goal.activity];
    result.ready = std::max(
        result.ready, activity.placed()
                          ? problem.tables[goal.table][static_cast<std::size_t>(activity.end())]
                          : never);
  }
  return result;
}

std::vector<Run> cleanings(const Product& product, std::vector<Run> used) {
  std::ranges::sort(used, {}, &Run::begin);
  std::vector<Run> all;
  for (std::size_t i = 1; i < used.size(); ++i) {
    const Slot from = used[i - 1].end;
    if (used[i].begin - from > product.uncleaned && product.clean_up > 0)
      all.push_back({from, from + product.clean_up});
  }
  return all;
}

bool has_workers_for_cleanings(const SchedulingProblem& problem, const Solution& solution) {
  std::vector<Run> taken = problem.away, extra;
  for (std::size_t i = 0; i < solution.activities.size(); ++i) {
    const SolvedActivity& each = solution.activities[i];
    if (each.placed() && problem.activities[i].workers > 0)
      taken.push_back({each.begin(), each.end()});
  }
  for (const SolvedSession& session : solution.sessions) {
    const Product& product = problem.products[session.product];
    taken.push_back({session.coats.begin - product.set_up, session.coats.begin});
    taken.push_back({session.coats.end, session.coats.end + product.clean_up});
    std::vector<Run> uses;
    for (const std::size_t i : session.activities)
      uses.push_back(used(problem.activities[i], solution.activities[i].begin()));
    for (const Run cleaning : cleanings(product, std::move(uses))) extra.push_back(cleaning);
  }
  taken.insert(taken.end(), extra.begin(), extra.end());
  return std::ranges::all_of(extra, [&](Run cleaning) {
    for (Slot at = cleaning.begin; at < cleaning.end; ++at)
      if (std::ranges::count_if(taken, [&](Run run) { return run.begin <= at && at < run.end; }) >
          problem.workers)
        return false;
    return true;
  });
}

std::vector<Run> pieces_from(const SchedulingProblem& problem, const Activity& activity,
                             Slot start) {
  if (!activity.splittable) {
    if (start + activity.duration > problem.horizon) return {};
    return {{start, start + activity.duration}};
  }
  const OpenTime& time = problem.open_times[activity.open_time];
  std::vector<Run> pieces;
  Slot left = activity.duration;
  for (Slot at = start; left > 0; at = time.next_open(pieces.back().end)) {
    if (at == never) return {};
    const Run piece{at, std::min(time.open_until(at), at + left)};
    const Slot length = piece.end - piece.begin;
    if (pieces.empty() && length < std::min(left, problem.shortest_piece)) return {};
    pieces.push_back(piece);
    left -= length;
  }
  return pieces;
}

Slot end_from(const SchedulingProblem& problem, const Activity& activity, Slot start) {
  if (!activity.splittable)
    return start + activity.duration > problem.horizon ? never : start + activity.duration;
  const OpenTime& time = problem.open_times[activity.open_time];
  if (time.open_until(start) - start < std::min(activity.duration, problem.shortest_piece))
    return never;
  Slot left = activity.duration;
  for (Slot at = start; at != never; at = time.next_open(time.open_until(at))) {
    const Slot length = time.open_until(at) - at;
    if (length >= left) return at + left;
    left -= length;
  }
  return never;
}

namespace {

template <class Either>
Slot after_either(const SchedulingProblem& problem, const Either& lag, Slot end) {
  const Slot ready = lag.table ? problem.tables[*lag.table][static_cast<std::size_t>(end)] : end;
  return ready == never ? never : ready + lag.delay;
}

}  // namespace

Slot after(const SchedulingProblem& problem, const Lag& lag, Slot end) {
  return after_either(problem, lag, end);
}

Slot after(const SchedulingProblem& problem, const MaximumLag& lag, Slot end) {
  return after_either(problem, lag, end);
}

Run held(const SchedulingProblem& problem, const Use& use, Run work) {
  return {work.begin, use.held_until
                          ? problem.tables[*use.held_until][static_cast<std::size_t>(work.end)]
                          : work.end};
}

bool disturbs(const Activity& dusty, const Activity& wet) {
  return dusty.dusty && wet.wet_until && dusty.room == wet.room &&
         (!dusty.family || dusty.family != wet.family);
}

std::optional<std::size_t> window_at(const SchedulingProblem& problem, Slot slot) {
  const auto after = std::upper_bound(problem.windows.begin(), problem.windows.end(), slot,
                                      [](Slot s, const Run& window) { return s < window.begin; });
  if (after == problem.windows.begin()) return std::nullopt;
  const auto window = after - 1;
  if (slot >= window->end) return std::nullopt;
  return static_cast<std::size_t>(window - problem.windows.begin());
}

}  // namespace tackfree::solver
