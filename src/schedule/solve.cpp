#include "tackfree/schedule/solve.hpp"

#include "tackfree/schedule/closing_rules.hpp"
#include "tackfree/solver/fluid_bound.hpp"
#include "tackfree/solver/serial.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <random>
#include <tuple>
#include <utility>

namespace tackfree {

namespace {

using solver::SchedulingProblem;
using solver::Solution;
using Priorities = std::vector<std::int64_t>;

/// Partial schedules that the search may make: a limit on work, not on time, so that the same job
/// gives the same plan on every machine.
constexpr std::int64_t most_partials = 1'000'000;
/// Activities that the search for several people may place in all, for the same reason.
constexpr std::int64_t most_placed = 40'000;
/// Between the priorities of neighbours in a list: others are put right before one of them again
/// and again, a few places apart, without passing the neighbour.
constexpr std::int64_t between_neighbours = 1'000;
/// So many batches take turns in one round; those after them follow a round later.
constexpr std::int64_t batches_in_a_round = 64;

Priorities listed_order(const PosedProblem& posed) {
  Priorities priorities(posed.problem.activities.size());
  for (std::size_t i = 0; i < priorities.size(); ++i)
    priorities[i] = static_cast<std::int64_t>(i) * between_neighbours;
  return priorities;
}

/// The first activity of each batch, then the second of each, and so on.
Priorities side_by_side(const PosedProblem& posed) {
  Priorities priorities = listed_order(posed);
  std::map<std::size_t, std::int64_t> count;
  for (std::size_t i = 0; i < posed.batch_of.size(); ++i)
    priorities[i] = (count[posed.batch_of[i]]++ * batches_in_a_round +
                     static_cast<std::int64_t>(posed.batch_of[i])) *
                    between_neighbours;
  return priorities;
}

/// What it costs to place one activity, in comparisons of two partial schedules: each activity is
/// looked at for whether its turn has come, and then times are tried. Measured, and half as much
/// again for making the problem.
std::int64_t effort_to_place(const SchedulingProblem& problem) {
  return 12 + static_cast<std::int64_t>(problem.activities.size() / 4);
}

/// Orders of activities, changed at random as long as that makes no worse schedule; sessions over
/// `most_sessions` are the next worst after work left out. Two orders are tried whatever is left of
/// `effort`.
Solution best_of_many_orders(const PosedProblem& posed, std::size_t most_sessions,
                             solver::Effort& effort) {
  const SchedulingProblem& problem = posed.problem;
  const std::size_t real = problem.activities.size();
  Priorities best = listed_order(posed);
  const auto in_order = [&](const Priorities& priorities) {
    std::int64_t placed = 0;
    Solution found = solver::placed_by_priority(problem, priorities, &placed);
    effort.left -= placed * effort_to_place(problem);
    return found;
  };
  Solution solution = in_order(best);
  solver::Worth worth = solver::worth(problem, solution);
  auto attempt = [&](Priorities changed) {
    Solution other = in_order(changed);
    const solver::Worth its = solver::worth(problem, other);
    const auto rank = [&](const solver::Worth& w) {
      return std::tuple(w.unplaced, std::max(w.sessions, most_sessions), w);
    };
    if (rank(its) > rank(worth)) return;
    worth = its;
    solution = std::move(other);
    best = std::move(changed);
  };
  attempt(side_by_side(posed));
  std::minstd_rand random(1);  // the distributions of the library differ between machines
  // Whoever is away must be looked at like work.
  const auto size = static_cast<std::int64_t>(real + problem.away.size());
  for (std::int64_t placed = 2 * size; placed < most_placed && real > 1 && effort.left > 0;
       placed += size) {
    Priorities changed = best;
    const std::size_t first = random() % real, second = random() % real;
    if (random() % 2 == 0)
      std::swap(changed[first], changed[second]);
    else
      changed[first] = changed[second] - 1 - static_cast<std::int64_t>(random() % 9);
    attempt(std::move(changed));
  }
  return solution;
}

/// The clean-ups in pauses of a session as it was found.
std::vector<solver::Run> cleanings_of(const SchedulingProblem& problem, const Solution& found,
                                      const solver::SolvedSession& session) {
  std::vector<solver::Run> uses;
  for (const std::size_t i : session.activities)
    uses.push_back(solver::used(problem.activities[i], found.activities[i].begin()));
  return solver::cleanings(problem.products[session.product], std::move(uses));
}

/// The other work that stands where tools of the session are to be cleaned.
std::vector<std::size_t> in_the_way(const SchedulingProblem& problem, const Solution& found,
                                    const solver::SolvedSession& session) {
  std::vector<std::size_t> others;
  for (const solver::Run cleaning : cleanings_of(problem, found, session))
    for (std::size_t i = 0; i < found.activities.size(); ++i) {
      const solver::SolvedActivity& other = found.activities[i];
      if (other.placed() && solver::overlap({other.begin(), other.end()}, cleaning))
        others.push_back(i);
    }
  return others;
}

/// The same order, but what is in the way of cleaning a tool comes after the pause.
Priorities with_pauses_last(const SchedulingProblem& problem, const Solution& found,
                            Priorities starts) {
  for (const solver::SolvedSession& session : found.sessions)
    for (const std::size_t other : in_the_way(problem, found, session))
      if (!problem.activities[other].product) starts[other] = session.coats.end;
  return starts;
}

/// The problem with no coat of a session that has something in the way before `found` has it, so
/// that they stay together.
SchedulingProblem coats_no_sooner(SchedulingProblem problem, const Solution& found) {
  for (const solver::SolvedSession& session : found.sessions) {
    if (in_the_way(problem, found, session).empty()) continue;
    for (const std::size_t i : session.activities) {
      solver::Activity& coat = problem.activities[i];
      std::vector<solver::Rule> closed = problem.open_times[coat.open_time].rules();
      const solver::Slot first = found.activities[i].begin();
      for (solver::Slot s = 0; s < first; ++s)
        if (closed[solver::index(s)] == solver::no_rule) closed[solver::index(s)] = rules::put_off;
      coat.open_time = problem.open_times.size();
      problem.open_times.emplace_back(std::move(closed));
    }
  }
  return problem;
}

/// The search that proves knows no tools to be cleaned in pauses of a session. Its answer is made
/// again in the same order, with time for them; `other`, which has it, stays where it is better.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the proved one, then the other
Solution with_cleanings(const SchedulingProblem& problem, const Solution& found, Solution other,
                        std::size_t most_sessions) {
  Priorities starts(problem.activities.size(), problem.horizon);
  for (std::size_t i = 0; i < starts.size(); ++i)
    if (found.activities[i].placed()) starts[i] = found.activities[i].begin();
  const auto rank = [&](const Solution& solution) {
    const solver::Worth w = solver::worth(problem, solution);
    return std::tuple(w.unplaced, std::max(w.sessions, most_sessions), w);
  };
  const Priorities pauses_last = with_pauses_last(problem, found, starts);
  for (const auto& [posed, order] :
       {std::pair(problem, starts), std::pair(coats_no_sooner(problem, found), pauses_last)}) {
    Solution again = solver::placed_by_priority(posed, order);
    if (rank(again) < rank(other)) other = std::move(again);
  }
  return other;
}

/// What is sure of a schedule of any number of people: how much sooner none is.
std::optional<Proof> bounded(const PosedProblem& posed, const solver::Worth& worth) {
  if (worth.unplaced > 0 || worth.ready == solver::never) return std::nullopt;
  const solver::Slot bound = std::min(solver::fluid_bound(posed.problem), worth.ready);
  return Proof{posed.grid.at(bound), bound == worth.ready, false};
}

}  // namespace

Solved solve(const PosedProblem& posed, std::size_t most_sessions, solver::Effort* effort) {
  const SchedulingProblem& problem = posed.problem;
  Solved solved;
  if (problem.workers > 1) {
    solver::Effort own;
    solved.solution = best_of_many_orders(posed, most_sessions, effort != nullptr ? *effort : own);
    solved.worth = solver::worth(problem, solved.solution);
    solved.proof = bounded(posed, solved.worth);
    return solved;
  }
  solved.solution = solver::serial_schedule(problem);
  auto searched = solver::best_schedule(problem, solved.solution, most_partials, most_sessions,
                                        solver::Prove::ready_and_sessions, effort);
  if (searched) {
    solved.impossible = searched->infeasible;
    const solver::Worth found = solver::worth(problem, searched->solution);
    if (solver::has_workers_for_cleanings(problem, searched->solution))
      solved.solution = std::move(searched->solution);
    else
      solved.solution =
          with_cleanings(problem, searched->solution, std::move(solved.solution), most_sessions);
    // What is proved without the cleanings bounds what is possible with them.
    const solver::Worth its = solver::worth(problem, solved.solution);
    searched->ready_proved = searched->ready_proved && its.ready == found.ready;
    searched->sessions_proved =
        searched->sessions_proved && its.ready == found.ready && its.sessions == found.sessions;
  }
  solved.worth = solver::worth(problem, solved.solution);
  if (searched && solved.worth.unplaced == 0 && solved.worth.ready != solver::never)
    solved.proof = {posed.grid.at(searched->ready_bound), searched->ready_proved,
                    searched->sessions_proved};
  return solved;
}

Solution solved_roughly(const PosedProblem& posed) {
  return posed.problem.workers > 1 ? solver::placed_by_priority(posed.problem, listed_order(posed))
                                   : solver::placed_by_earliest_start(posed.problem);
}

}  // namespace tackfree
