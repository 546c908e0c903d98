#include "tackfree/plan/due_dates.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

Plan plan_due(const char* due) {
  Job job = testing::sample_job();
  testing::add_legs(job);
  job.batches[0].rules.ready_by = testing::instant(due);
  Problems problems;
  return make_plan(std::move(job), testing::instant("2027-04-05T17:00Z"), problems).value();
}

TEST_CASE("a batch that is ready when due is in time, and only batches with a due date are told") {
  const auto dates = due_dates(plan_due("2027-05-20T00:00Z"));
  REQUIRE(dates.size() == 1);
  CHECK(dates[0].batch == 0);
  CHECK(dates[0].in_time());
  CHECK(dates[0].late_by() == Minutes(0));
  CHECK_FALSE(dates[0].longest_wait);
}

TEST_CASE("a late batch is planned all the same, with how late it is and its longest wait") {
  const Plan plan = plan_due("2027-04-08T00:00Z");
  const auto dates = due_dates(plan);
  REQUIRE(dates.size() == 1);
  REQUIRE(dates[0].ready);
  CHECK_FALSE(dates[0].in_time());
  REQUIRE(dates[0].done);
  CHECK(dates[0].late_by() ==
        std::max(*dates[0].ready, *dates[0].done) - testing::instant("2027-04-08T00:00Z"));
  CHECK(dates[0].longest_wait);
}

// Seen failing: ready for light use on Wednesday, due on Friday, its hardware fitted on Saturday.
TEST_CASE("a batch whose hardware is fitted after it is due is not in time") {
  Plan plan = plan_due("2027-05-20T00:00Z");
  const DueDate before = due_dates(plan).at(0);
  REQUIRE(before.in_time());
  REQUIRE(before.done);
  plan.job.batches[0].rules.ready_by = std::max(*before.ready, *before.done) - Minutes(5);
  CHECK_FALSE(due_dates(plan)[0].in_time());
  plan.job.batches[0].rules.ready_by = std::max(*before.ready, *before.done);
  CHECK(due_dates(plan)[0].in_time());
  DatedStep& last = plan.schedule.steps.back();
  REQUIRE(plan.list.operations[last.operation].batch == 0);
  last.pieces = {{*before.ready + Minutes(60), *before.ready + Minutes(90)}};
  plan.job.batches[0].rules.ready_by = *before.ready + Minutes(75);
  CHECK(due_dates(plan)[0].ready_in_time());
  CHECK_FALSE(due_dates(plan)[0].in_time());
  CHECK(due_dates(plan)[0].late_by() == Minutes(15));
}

TEST_CASE("deciding steps follow each other, begin with one that waits for none, end with a coat") {
  const Plan plan = plan_due("2027-05-20T00:00Z");
  const auto steps = deciding_steps(plan, 0);
  REQUIRE(steps.size() > 3);
  const auto& dated = plan.schedule.steps;
  CHECK(plan.list.operations[dated[steps.front()].operation].waits.empty());
  CHECK(plan.list.operations[dated[steps.back()].operation].kind == OperationKind::coat);
  for (std::size_t i = 1; i < steps.size(); ++i)
    CHECK(dated[steps[i - 1]].begin() <= dated[steps[i]].begin());
}

TEST_CASE("the longest wait comes first, and waits and work make up the way to the last coat") {
  const Plan plan = plan_due("2027-05-20T00:00Z");
  const auto waits = deciding_waits(plan, 0);
  REQUIRE(waits.size() > 1);
  for (std::size_t i = 1; i < waits.size(); ++i) CHECK(waits[i - 1].length >= waits[i].length);
  const DatedStep& after = plan.schedule.steps[waits.front().dated_step];
  CHECK(after.begin() - waits.front().length >= plan.schedule.span.begin);
  CHECK(waits.front().length >= Minutes(8 * 60));  // a night lies between two coats
}

TEST_CASE("the batch that is ready last decides") {
  Plan plan = plan_due("2027-05-20T00:00Z");
  const auto last = last_batch(plan);
  REQUIRE(last);
  for (const DatedOutcome& outcome : plan.schedule.outcomes)
    if (outcome.batch == *last && outcome.stage == Stage::light_use)
      CHECK(outcome.at == plan.schedule.ready_at);
  plan.schedule.ready_at.reset();
  CHECK_FALSE(last_batch(plan));
}

TEST_CASE("steps decide also where no reason was kept: by what they come after") {
  Plan plan = plan_due("2027-05-20T00:00Z");
  for (DatedStep& step : plan.schedule.steps) step.held.clear();
  const auto steps = deciding_steps(plan, 0);
  REQUIRE(steps.size() > 3);
  CHECK(plan.list.operations[plan.schedule.steps[steps.front()].operation].waits.empty());
}

TEST_CASE("a batch without a date of its own within the plan has none that decide") {
  Job job = testing::sample_job();
  job.horizon = days(3);
  job.batches[0].rules.ready_by = testing::instant("2027-05-20T00:00Z");
  Problems problems;
  const Plan plan = make_plan(job, testing::instant("2027-04-05T17:00Z"), problems).value();
  CHECK(deciding_steps(plan, 0).empty());
  CHECK_FALSE(due_dates(plan)[0].in_time());
}

}  // namespace
}  // namespace tackfree
