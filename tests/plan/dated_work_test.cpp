#include "tackfree/plan/dated_work.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

struct Standing {
  Plan plan;
  std::vector<DryingClock> clocks;
  Interval span;
};

Standing standing(Job job) {
  Problems problems;
  job.horizon = days(28);
  Plan plan =
      make_standing(std::move(job), testing::instant("2027-04-05T17:00Z"), problems).value();
  const Interval span{plan.now, plan.now + whole_minutes_up(plan.job.horizon)};
  auto clocks = drying_clocks(plan.job.coatings, plan.air, plan.job.room.air_speed, false);
  return {std::move(plan), std::move(clocks), span};
}

/// The top and legs that are dry sooner, so that they need not share its sessions.
Job top_with_legs() {
  Job job = testing::sample_job();
  testing::add_legs(job);
  return job;
}

TEST_CASE("dated in fewer sessions a job is ready later, down to where that is proved impossible") {
  Standing job = standing(top_with_legs());
  Plan soonest = job.plan;
  date_work(soonest, job.clocks, job.span);
  REQUIRE(soonest.schedule.ready_at);
  std::size_t sessions = soonest.schedule.sessions.size();
  Instant ready = *soonest.schedule.ready_at;
  while (true) {
    Plan next = job.plan;
    const Fewer fewer = date_work_in_sessions(next, job.clocks, job.span, sessions - 1);
    CHECK(fewer != Fewer::not_found);
    if (fewer != Fewer::found) break;
    REQUIRE(next.schedule.ready_at);
    CHECK(next.schedule.sessions.size() < sessions);
    CHECK(*next.schedule.ready_at > ready);
    sessions = next.schedule.sessions.size();
    ready = *next.schedule.ready_at;
  }
  // The top is coated on two sides, three times each; no two of these dry in one window.
  CHECK(sessions == 6);
}

TEST_CASE("the coats that are held to a window are marked in the list, no others") {
  Standing job = standing(testing::sample_job());
  job.plan.in_window[{0, 0, 2}] = hours(3);
  list_work(job.plan);
  for (const Operation& op : job.plan.list.operations) {
    CHECK(op.window_to_spare.has_value() == (op.coating && op.coat == 2));
    if (op.window_to_spare) CHECK(*op.window_to_spare == hours(3));
  }
}

}  // namespace
}  // namespace tackfree
