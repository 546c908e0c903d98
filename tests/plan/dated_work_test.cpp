#include "tackfree/plan/dated_work.hpp"

#include "tackfree/plan/make_work_at_hand.hpp"

#include <string>
#include <vector>

#include "plan/planned_log.hpp"
#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>
#include <fmt/format.h>

namespace tackfree {
namespace {

struct Standing {
  WorkAtHand work;
  std::vector<DryingClock> clocks;
  Interval span;
};

Standing standing(Job job) {
  Problems problems;
  job.horizon = days(28);
  WorkAtHand work = make_work_at_hand(job, testing::instant("2027-04-05T17:00Z"), problems).value();
  auto clocks = drying_clocks(work.job.coatings, work.air, work.job.room.air_speed, false);
  const Interval span = work.span();
  return {std::move(work), std::move(clocks), span};
}

/// The top and legs that are dry sooner, so that they need not share its sessions.
Job top_with_legs() {
  Job job = testing::sample_job();
  testing::add_legs(job);
  return job;
}

TEST_CASE("dated in fewer sessions a job is ready later, down to where that is proved impossible") {
  Standing job = standing(top_with_legs());
  const DatedWork soonest = date_work(job.work, job.clocks, job.span);
  REQUIRE(soonest.schedule.ready_at);
  std::size_t sessions = soonest.schedule.sessions.size();
  Instant ready = *soonest.schedule.ready_at;
  while (true) {
    const InSessions fewer = date_work_in_sessions(job.work, job.clocks, job.span, sessions - 1);
    CHECK(fewer.proved_none != fewer.work.has_value());
    if (!fewer.work) break;
    const DatedWork& next = *fewer.work;
    REQUIRE(next.schedule.ready_at);
    CHECK(next.schedule.sessions.size() < sessions);
    CHECK(*next.schedule.ready_at > ready);
    sessions = next.schedule.sessions.size();
    ready = *next.schedule.ready_at;
  }
  // The top is coated on two sides, three times each; no two of these dry in one window.
  CHECK(sessions == 6);
}

/// The sample job in one go, with varnish that is recoated unsanded within half a day; the log says
/// how far it is.
Job half_a_day(std::vector<LogEntry> entries) {
  Job job = testing::unsanded_job(hours(12));
  job.history.file = "sample.log.jsonl";
  job.history.entries = std::move(entries);
  return job;
}

std::string key_of_coat(int number) { return fmt::format("top/finish/coat-{}/both/coat", number); }

const DatedStep* step_called(const Plan& plan, const std::string& key) {
  for (const DatedStep& step : plan.schedule.steps)
    if (plan.list.operations[step.operation].key == key) return &step;
  return nullptr;
}

TEST_CASE("a coat washed off for fisheyes goes on bare wood again, however late") {
  const Plan plan = testing::planned_again(
      half_a_day({testing::coat(1, key_of_coat(1), "2027-04-06T20:00Z"),
                  testing::fault(2, key_of_coat(1), "2027-04-07T18:00Z", Fault::fisheyes)}),
      "2027-04-07T18:05Z");
  CHECK(plan.schedule.unplaced.empty());
  CHECK(plan.schedule.ready_at);
  CHECK_FALSE(plan.keyed.contains({0, 0, 1, 1}));
  const DatedStep* repair = step_called(plan, "top/finish/coat-1/both/repair-fisheyes");
  const DatedStep* again = step_called(plan, key_of_coat(1) + "-again");
  REQUIRE(repair);
  REQUIRE(again);
  CHECK(repair->end() <= again->begin());
  const DatedStep* second = step_called(plan, key_of_coat(2));
  REQUIRE(second);
  CHECK(again->end() < second->begin());
}

TEST_CASE("a coat put on again past the window of what it lies on is sanded for after the repair") {
  struct Case {
    int coat;
    Fault fault;
  };
  for (const Case& each : {Case{2, Fault::fisheyes}, Case{3, Fault::sand_through},
                           Case{3, Fault::runs}, Case{3, Fault::fisheyes}}) {
    CAPTURE(each.coat);
    std::vector<LogEntry> log;
    for (int coat = 1; coat <= each.coat; ++coat)
      log.push_back(testing::coat(coat, key_of_coat(coat),
                                  fmt::format("2027-04-0{}T20:00Z", 5 + coat).c_str()));
    log.push_back(testing::fault(9, key_of_coat(each.coat),
                                 fmt::format("2027-04-0{}T18:00Z", 6 + each.coat).c_str(),
                                 each.fault));
    const Plan plan = testing::planned_again(half_a_day(log), "2027-04-09T18:05Z");
    CHECK(plan.schedule.unplaced.empty());
    CHECK(plan.keyed.contains({0, 0, each.coat, 1}));
    const DatedStep* again = step_called(plan, key_of_coat(each.coat) + "-again");
    REQUIRE(again);
    const DatedStep* sanding = nullptr;
    for (const DatedStep& step : plan.schedule.steps)
      if (plan.list.operations[step.operation].key.ends_with("-again") &&
          step.begin() < again->begin())
        sanding = &step;
    REQUIRE(sanding);
    CHECK(plan.list.operations[sanding->operation].kind == OperationKind::sand_between);
    // Logged as done, it is known again.
    log.push_back(testing::entry(10, LogKind::done, plan.list.operations[sanding->operation].key,
                                 "2027-04-12T19:00Z"));
    const Plan later = testing::planned_again(half_a_day(log), "2027-04-12T19:05Z");
    CHECK(step_called(later, log.back().step));
  }
}

}  // namespace
}  // namespace tackfree
