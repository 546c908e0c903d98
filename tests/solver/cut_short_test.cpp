#include "tackfree/solver/cut_short.hpp"

#include "tackfree/solver/serial.hpp"

#include "effort.hpp"
#include "solver/brute_force.hpp"
#include "solver/small_problems.hpp"
#include <doctest/doctest.h>

namespace tackfree::solver {
namespace {

TEST_CASE("a problem cut short for a schedule has schedules as soon and with as few sessions") {
  int shorter = 0, compared = 0;
  for (unsigned seed = 0; seed < tackfree::testing::cases(800U); ++seed) {
    SchedulingProblem p = testing::problem_with_every_rule(seed, 26, 2, false);
    // Work that follows the last coat, for which no goal waits.
    if (seed % 2 == 0) {
      p.activities.push_back({.duration = 1});
      p.lags.push_back({p.activities.size() - 2, p.activities.size() - 1, std::size_t{0}, 0});
    }
    if (p.activities.size() > 5) continue;
    const Worth known = worth(p, serial_schedule(p));
    if (known.unplaced > 0 || known.ready == never) continue;
    const Slot horizon = horizon_for(p, known.ready);
    const SchedulingProblem cut = cut_short(p, horizon);
    shorter += horizon < p.horizon;
    ++compared;
    CAPTURE(seed);
    CHECK(cut.horizon == horizon);
    testing::BruteForce whole(p), part(cut);
    whole.run();
    part.run();
    CHECK(part.best == whole.best);
  }
  CHECK(shorter > tackfree::testing::cases(20));
  CHECK(compared > tackfree::testing::cases(100));
}

TEST_CASE("a horizon is not cut where work without a goal might need what comes later") {
  SchedulingProblem p = testing::random_problem(4, 60, 2);
  REQUIRE(horizon_for(p, 20) < 60);
  p.activities.push_back({.duration = 2, .open_time = 0, .splittable = true, .dusty = true});
  CHECK(horizon_for(p, 20) == 60);
}

}  // namespace
}  // namespace tackfree::solver
