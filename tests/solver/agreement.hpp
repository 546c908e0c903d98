// Agreement: what a search says of a tiny problem held against the best of all its schedules.
#pragma once

#include "tackfree/solver/proof_search.hpp"

#include "bench/check.hpp"
#include "solver/brute_force.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver::testing {

enum class Agreed { schedule, no_schedule };

/// Checks that `found` keeps the rules and is proved to be what brute force finds: as soon, with as
/// few sessions where those were minimised, or that there is none.
inline Agreed check_agreement(const SchedulingProblem& p, const Searched& found, bool sessions,
                              std::size_t most_sessions = any_number) {
  BruteForce brute(p);
  brute.most_sessions = most_sessions;
  brute.run();
  const Worth w = worth(p, found.solution);
  for (const std::string& broken : violations(p, found.solution)) FAIL_CHECK(broken);
  if (brute.best.first == never) {
    CHECK(found.infeasible);
    CHECK((w.unplaced > 0 || w.ready == never));
    return Agreed::no_schedule;
  }
  CHECK_FALSE(found.infeasible);
  CHECK(found.ready_proved);
  CHECK(found.ready_bound == w.ready);
  CHECK(w.ready == brute.best.first);
  if (sessions) {
    CHECK(found.sessions_proved);
    CHECK(w.sessions == brute.best.second);
  }
  return Agreed::schedule;
}

}  // namespace tackfree::solver::testing
