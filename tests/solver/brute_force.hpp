// Brute force: the best of every schedule of a tiny problem, with the checker as its only judge.
#pragma once

#include "tackfree/solver/proof_search.hpp"
#include "tackfree/solver/scheduling_problem.hpp"

#include <algorithm>
#include <utility>

#include "bench/check.hpp"

namespace tackfree::solver::testing {

/// The best (ready, sessions) of every schedule, by trying all starts: brute force with the checker
/// as its only judge.
struct BruteForce {
  explicit BruteForce(const SchedulingProblem& problem) : p(problem) {
    s.activities.resize(p.activities.size());
  }

  const SchedulingProblem& p;
  Solution s{};
  std::pair<Slot, std::size_t> best{never, 0};
  std::size_t most_sessions = any_number;

  void run() { try_all(0); }

  void try_all(std::size_t next) {
    if (next == p.activities.size()) {
      judge();
      return;
    }
    const OpenTime& time = p.open_times[p.activities[next].open_time];
    for (Slot at = time.next_open(0); at != never; at = time.next_open(at + 1)) {
      s.activities[next].pieces = pieces_from(p, p.activities[next], at);
      if (!s.activities[next].pieces.empty() && fits_so_far(next)) try_all(next + 1);
    }
    s.activities[next].pieces.clear();
  }

  bool fits_so_far(std::size_t i) const {
    for (const Lag& lag : p.lags) {
      if (lag.to != i) continue;
      const Slot end = s.activities[lag.from].end();
      const Slot ready = lag.table ? p.tables[*lag.table][static_cast<std::size_t>(end)] : end;
      if (ready == never || s.activities[i].begin() < ready + lag.delay) return false;
    }
    for (const MaximumLag& lag : p.maximum_lags) {
      if (!s.activities[lag.from].placed() || !s.activities[lag.to].placed()) continue;
      if (s.activities[lag.to].begin() > after(p, lag, s.activities[lag.from].end())) return false;
    }
    int busy = 0;
    for (std::size_t other = 0; other < i; ++other)
      if (p.activities[other].workers > 0 &&
          overlap({s.activities[other].begin(), s.activities[other].end()},
                  {s.activities[i].begin(), s.activities[i].end()}))
        ++busy;
    return p.workers > 1 || p.activities[i].workers == 0 || busy < p.workers;
  }

  void judge() {
    s.sessions.clear();
    for (std::size_t i = 0; i < p.activities.size(); ++i) {
      if (!p.activities[i].product) continue;
      const auto window = window_at(p, s.activities[i].begin());
      const Run run{s.activities[i].begin(), s.activities[i].end()};
      auto same = std::find_if(s.sessions.begin(), s.sessions.end(), [&](const SolvedSession& x) {
        return x.product == *p.activities[i].product && x.window == *window;
      });
      if (same == s.sessions.end())
        s.sessions.push_back({*p.activities[i].product, *window, run, {i}});
      else
        same->coats = {std::min(same->coats.begin, run.begin), std::max(same->coats.end, run.end)};
    }
    const Worth w = worth(p, s);
    if (w.sessions > most_sessions) return;
    if (std::pair(w.ready, w.sessions) < best && violations(p, s).empty())
      best = {w.ready, w.sessions};
  }
};

}  // namespace tackfree::solver::testing
