#include "tackfree/schedule/recoat_limits.hpp"

#include "tackfree/air/recoat_window.hpp"
#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/pose_problem.hpp"
#include "tackfree/solver/proof_search.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::Scheduled;

/// The second coat is to keep `spare` of the 30 h in which it may go on unsanded.
Scheduled held(Duration spare) {
  Job job = testing::unsanded_job(hours(30));
  job.horizon = days(14);
  Scheduled s = testing::scheduled(job);
  for (Operation& op : s.list.operations)
    if (op.coating && op.coat == 2) op.window_to_spare = spare;
  return s;
}

PosedProblem posed_with_limits(const Scheduled& s) {
  return pose_problem(s.job, s.list, s.air, drying_clocks(s.job, s.air), s.schedule.span);
}

TEST_CASE("a coat held to its window has a maximum lag that ends with it, less what is to spare") {
  for (const double spare : {0.0, 4.0}) {
    const Scheduled s = held(hours(spare));
    const PosedProblem b = posed_with_limits(s);
    REQUIRE(b.problem.maximum_lags.size() == 1);
    const solver::MaximumLag& lag = b.problem.maximum_lags.front();
    const Operation& over = s.list.operations[b.operation_of[lag.to]];
    CHECK(over.coat == 2);
    const solver::Slot before = b.place[b.operation_of[lag.to]].begin;
    const solver::Activity& under = b.problem.activities[lag.from];
    const solver::OpenTime& time = b.problem.open_times[under.open_time];
    int compared = 0;
    for (solver::Slot start = time.next_open(0); start != solver::never;
         start = time.next_open(start + 1)) {
      const solver::Slot end = start + under.duration;
      const Instant until = recoat_unsanded_until(s.job.coatings[0], s.air, b.grid.at(end)).value();
      const solver::Slot last = b.problem.tables[*lag.table][solver::index(end)];
      CHECK(b.grid.at(last + before) <= until - whole_minutes_up(hours(spare)));
      CHECK(b.grid.at(last + before + 1) > until - whole_minutes_up(hours(spare)));
      ++compared;
    }
    CHECK(compared > 100);
    CHECK(solver::best_schedule(
        b.problem, {std::vector<solver::SolvedActivity>(b.problem.activities.size()), {}},
        100'000));
  }
}

TEST_CASE("the table of a limit never decreases, or order would not imply timing") {
  const PosedProblem b = posed_with_limits(held(hours(4)));
  const solver::LagTable& table = b.problem.tables[b.problem.maximum_lags.front().table.value()];
  for (std::size_t e = 1; e < table.size(); ++e) CHECK(table[e - 1] <= table[e]);
}

TEST_CASE("what is sanded for, or over wood, gets no limit; over a coat that is on, starts close") {
  Scheduled s = held(hours(0));
  for (Operation& op : s.list.operations) {
    if (op.coating && op.coat == 2) op.window_to_spare.reset();
    if (op.coating && op.coat == 1) op.window_to_spare = Duration();
  }
  CHECK(posed_with_limits(s).problem.maximum_lags.empty());
  Scheduled sanded = held(hours(0));
  sanded.job.coatings[0].needs_sanding_between = true;
  Scheduled again = testing::scheduled(sanded.job);
  for (Operation& op : again.list.operations)
    if (op.coating) op.window_to_spare = Duration();
  CHECK(posed_with_limits(again).problem.maximum_lags.empty());

  Scheduled on = held(hours(0));
  const Instant begun = on.schedule.span.begin;
  for (Operation& op : on.list.operations) {
    if (op.coat < 2) op.done = Done{.time = {begun, begun + Minutes(30)}};
  }
  const PosedProblem b = posed_with_limits(on);
  CHECK(b.problem.maximum_lags.empty());
  const Instant until =
      recoat_unsanded_until(on.job.coatings[0], on.air, begun + Minutes(30)).value();
  for (std::size_t i = 0; i < on.list.operations.size(); ++i) {
    const Operation& op = on.list.operations[i];
    if (!op.coating || op.coat != 2) continue;
    const solver::Activity& a = b.problem.activities[b.activity_of[i]];
    const solver::OpenTime& time = b.problem.open_times[a.open_time];
    solver::Slot last = -1;
    for (solver::Slot at = time.next_open(0); at != solver::never; at = time.next_open(at + 1))
      last = at;
    REQUIRE(last >= 0);
    CHECK(b.grid.at(last + b.place[i].begin) <= until);
  }
}

TEST_CASE("the checker, which knows no maximum lags, misses hours that were to be spare") {
  Scheduled s = held(hours(0));
  CHECK(broken_rules(s.job, s.list, s.air, s.schedule).empty());
  for (Operation& op : s.list.operations)
    if (op.window_to_spare) op.window_to_spare = hours(29);
  const auto broken = broken_rules(s.job, s.list, s.air, s.schedule);
  REQUIRE(broken.size() == 1);
  CHECK(broken.front().find("past the window of the coat below") != std::string::npos);
}

}  // namespace
}  // namespace tackfree
