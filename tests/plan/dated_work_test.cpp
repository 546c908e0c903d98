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

TEST_CASE("later plans of a run have what the first one left, and a small part in any case") {
  CHECK(effort_after({.left = most_effort}).left == most_effort);
  CHECK(effort_after({.left = -7}).left == least_effort);
  CHECK(least_effort * 4 <= most_effort);
}

TEST_CASE("the searches of a run have 16 million comparisons, and end with a plan and no proof") {
  CHECK(most_effort == 16'000'000);
  Standing job = standing(top_with_legs());
  solver::Effort enough{.left = most_effort}, little{.left = 1};
  const DatedWork whole = date_work(job.work, job.clocks, job.span, &enough);
  const DatedWork cut = date_work(job.work, job.clocks, job.span, &little);
  REQUIRE(whole.schedule.proof);
  CHECK(whole.schedule.proof->earliest_ready);
  CHECK(enough.left > 0);
  CHECK(little.left <= 0);
  CHECK(cut.schedule.unplaced.empty());
  REQUIRE(cut.schedule.ready_at);
  CHECK(*cut.schedule.ready_at >= *whole.schedule.ready_at);
  CHECK_FALSE((cut.schedule.proof && cut.schedule.proof->fewest_sessions));
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

/// The sample job in one go, with coats of a class, in a cool room; the log says how far it is.
Job in_one_go(const std::string& class_key, std::vector<LogEntry> entries) {
  Job job = testing::sample_job(class_key);
  job.batches[0].sides = Sides::on_points;
  job.air = ConstantAir{celsius(18), humidity_percent(50)};
  job.history.file = "sample.log.jsonl";
  job.history.entries = std::move(entries);
  return job;
}

std::string sanding_before_coat_2(const std::string& class_key) {
  const Plan plan = testing::planned_again(in_one_go(class_key, {}), "2027-04-05T17:00Z");
  for (const Operation& op : plan.list.operations)
    if (op.kind == OperationKind::sand_between && op.coat == 2) return op.key;
  return {};
}

TEST_CASE("a coat waits for the one below it, though the log has the sanding between them") {
  for (const std::string class_key : {"oil_polyurethane", "nitrocellulose_lacquer", "shellac"}) {
    const LogEntry first = testing::coat(1, key_of_coat(1), "2027-04-06T18:30Z");
    const std::string sanding = sanding_before_coat_2(class_key);
    LogEntry too_early = testing::entry(2, LogKind::done, sanding, "2027-04-06T18:45Z");
    too_early.insisted = true;
    const LogEntry left_out = testing::entry(2, LogKind::skipped, sanding, "2027-04-06T18:45Z");
    const std::vector<std::vector<LogEntry>> logs{
        {first, too_early}, {first, left_out}, {too_early}};
    for (const std::vector<LogEntry>& log : logs) {
      CAPTURE(class_key);
      CAPTURE(log.size());
      const Plan plan = testing::planned_again(in_one_go(class_key, log), "2027-04-06T18:50Z");
      const DatedStep* below = step_called(plan, key_of_coat(1));
      const DatedStep* second = step_called(plan, key_of_coat(2));
      REQUIRE(below);
      REQUIRE(second);
      REQUIRE(below->reaches[index_of(Stage::recoat)]);
      CHECK(second->begin() >= *below->reaches[index_of(Stage::recoat)]);
    }
  }
}

// make_plan throws when its checker finds a coat on a film that may not be recoated.
TEST_CASE("whatever goes wrong with a coat, none goes on before what lies below may be recoated") {
  for (const std::string class_key : {"oil_polyurethane", "nitrocellulose_lacquer", "shellac"})
    for (const Fault what :
         {Fault::runs, Fault::wrinkling, Fault::fisheyes, Fault::blush, Fault::sand_through})
      for (const int coat : {1, 2, 3}) {
        std::vector<LogEntry> log;
        for (int each = 1; each <= coat; ++each)
          log.push_back(testing::coat(each, key_of_coat(each),
                                      fmt::format("2027-04-1{}T10:00Z", each - 1).c_str()));
        log.back().at = testing::instant("2027-04-17T10:00Z");
        log.push_back(testing::fault(7, key_of_coat(coat), "2027-04-17T10:10Z", what));
        CAPTURE(class_key);
        CAPTURE(static_cast<int>(what));
        CAPTURE(coat);
        const Plan plan = testing::planned_again(in_one_go(class_key, log), "2027-04-17T10:15Z");
        CHECK(plan.schedule.unplaced.empty());
        // The same with the repair done at once.
        for (const Operation& op : plan.list.operations)
          if (op.kind == OperationKind::repair)
            log.push_back(testing::entry(8, LogKind::done, op.key, "2027-04-17T10:30Z"));
        log.back().insisted = true;
        testing::planned_again(in_one_go(class_key, log), "2027-04-17T10:35Z");
      }
}

}  // namespace
}  // namespace tackfree
