#include "tackfree/schedule/solve.hpp"

#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/pose_problem.hpp"

#include <cstdint>
#include <numeric>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

Job long_days() {
  Job job = testing::sample_job();
  testing::add_legs(job);
  job.calendar.no_power_sanding.clear();
  for (auto& day : job.calendar.weekly) day = {{8 * 60, 12 * 60}};
  job.parts[0].quantity = 4;
  return job;
}

TEST_CASE("a second person with the same hours never makes the plan later, and a bound is proved") {
  Job job = long_days();
  const testing::Scheduled alone = testing::scheduled(job);
  job.people = {{"A", job.calendar, 0}, {"B", job.calendar, 0}};
  const testing::Scheduled both = testing::scheduled(job);
  CHECK(broken_rules(both.job, both.list, both.air, both.schedule).empty());
  REQUIRE(both.schedule.ready_at);
  CHECK(*both.schedule.ready_at <= *alone.schedule.ready_at);
  CHECK(alone.schedule.proof);
  REQUIRE(both.schedule.proof);
  CHECK(both.schedule.proof->ready_no_sooner_than <= *both.schedule.ready_at);
  CHECK(both.schedule.proof->ready_no_sooner_than > both.schedule.span.begin);
  CHECK_FALSE(both.schedule.proof->fewest_sessions);
}

TEST_CASE("one person in a list has the plan of one who is not, but for the name") {
  Job job = long_days();
  const testing::Scheduled unnamed = testing::scheduled(job);
  job.people = {{"A", job.calendar, 0}};
  const testing::Scheduled named = testing::scheduled(job);
  CHECK(named.schedule.ready_at == unnamed.schedule.ready_at);
  CHECK(named.schedule.proof);
}

TEST_CASE("the search for several people ends when the effort of the run is used up") {
  Job job = long_days();
  job.people = {{"A", job.calendar, 0}, {"B", job.calendar, 0}};
  const testing::Scheduled dated = testing::scheduled(job);
  const PosedProblem problem = pose_problem(
      dated.job, dated.list, dated.air, drying_clocks(dated.job, dated.air), dated.schedule.span);
  constexpr std::int64_t plenty = 1'000'000'000;
  solver::Effort all{.left = plenty}, none{.left = 0};
  const Solved sought = solve(problem, solver::any_number, &all);
  const Solved at_once = solve(problem, solver::any_number, &none);
  // The listed order, and the batches side by side.
  const auto two_orders = static_cast<std::int64_t>(2 * problem.problem.activities.size());
  CHECK(none.left < 0);
  CHECK(-none.left % two_orders == 0);
  CHECK(plenty - all.left > 100 * -none.left);
  CHECK(at_once.worth.unplaced == 0);
  CHECK(sought.worth <= at_once.worth);
}

TEST_CASE("the same shop has the same plan every time") {
  Job job = long_days();
  job.people = {{"A", job.calendar, 0}, {"B", job.calendar, 0}};
  job.people[1].hours.weekly[2].clear();
  const testing::Scheduled first = testing::scheduled(job), second = testing::scheduled(job);
  REQUIRE(first.schedule.steps.size() == second.schedule.steps.size());
  for (std::size_t i = 0; i < first.schedule.steps.size(); ++i)
    CHECK(first.schedule.steps[i].pieces == second.schedule.steps[i].pieces);
}

TEST_CASE("whoever is alone is not at other work while a tool is to be cleaned in a pause") {
  PosedProblem posed;
  const Instant begin = testing::instant("2027-04-05T08:00Z");
  posed.grid = {{begin, begin + Minutes(5 * 40)}, Minutes(5)};
  solver::SchedulingProblem& p = posed.problem;
  p.horizon = 40;
  p.windows = {{0, 40}};
  p.open_times = {solver::OpenTime(std::vector<solver::Rule>(40, solver::no_rule))};
  p.products = {{.set_up = 1, .clean_up = 2, .uncleaned = 3}};
  p.activities = {{.duration = 2, .product = 0}, {.duration = 2, .product = 0}, {.duration = 5}};
  p.lags = {{.from = 0, .to = 1, .delay = 8}};
  solver::LagTable at_end(41);
  std::iota(at_end.begin(), at_end.end(), 0);
  p.tables = {at_end};
  p.goals = {{1, 0}, {2, 0}};
  const Solved solved = solve(posed);
  CHECK(solved.worth.unplaced == 0);
  CHECK(solved.worth.sessions == 1);
  CHECK(solver::has_workers_for_cleanings(p, solved.solution));
  // In the pause, but after the cleaning.
  CHECK(solved.solution.activities[2].begin() == 5);
  p.activities[2].duration = 8;  // no room beside the cleaning: after the second coat
  const Solved longer = solve(posed);
  CHECK(longer.worth.unplaced == 0);
  CHECK(solver::has_workers_for_cleanings(p, longer.solution));
}

}  // namespace
}  // namespace tackfree
