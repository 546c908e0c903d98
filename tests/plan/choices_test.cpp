#include "tackfree/plan/choices.hpp"

#include "tackfree/plan/due_dates.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/schedule/check_schedule.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::instant;

constexpr const char* asked_at = "2027-04-05T17:00Z";

/// A top with two sides and legs, in a finish of which a long Saturday bears two coats: sessions
/// are saved by waiting for it.
Job top_and_legs() {
  Job job = testing::sample_job("waterborne_two_component");
  testing::add_legs(job);
  job.horizon = days(28);
  return job;
}

Choices choices_for(const Job& job) {
  Problems problems;
  auto found = choices_of(job, instant(asked_at), problems);
  REQUIRE(problems.empty());
  return std::move(*found);
}

Plan plan_for(const Job& job) {
  Problems problems;
  auto plan = make_plan(job, instant(asked_at), problems);
  REQUIRE(problems.empty());
  return std::move(*plan);
}

// Common practice, no source: one session fewer is a set-up and a clean-up saved, for a later date.
TEST_CASE("each choice is later than the one before, in fewer sessions, and keeps every rule") {
  const Choices found = choices_for(top_and_legs());
  REQUIRE(found.ways.size() >= 2);
  for (std::size_t i = 0; i < found.ways.size(); ++i) {
    const Way& way = found.ways[i];
    CAPTURE(i);
    CHECK(way.schedule.unplaced.empty());
    CHECK(broken_rules(way.job, way.list, way.air, way.schedule).empty());
    if (i == 0) continue;
    CHECK(way.schedule.ready_at > found.ways[i - 1].schedule.ready_at);
    CHECK(way.schedule.sessions.size() < found.ways[i - 1].schedule.sessions.size());
  }
  CHECK(found.none_fewer);
}

TEST_CASE(
    "the first choice is the plan that aims at an early date, the last one that at sessions") {
  Job job = top_and_legs();
  const Choices found = choices_for(job);
  const auto same = [](const Plan& plan, const Way& way) {
    CHECK(plan.schedule.ready_at == way.schedule.ready_at);
    CHECK(plan.schedule.sessions.size() == way.schedule.sessions.size());
  };
  same(plan_for(job), found.ways.front());
  job.aim = Aim::sessions;
  const Plan fewest = plan_for(job);
  same(fewest, found.ways.back());
  REQUIRE(fewest.schedule.proof);
  CHECK(fewest.schedule.proof->fewest_sessions == found.none_fewer);
}

TEST_CASE("of several choices the one that is ready by a date is had with that date") {
  Job job = top_and_legs();
  const Choices free = choices_for(job);
  REQUIRE(free.ways.size() >= 2);
  const std::size_t chosen = free.ways.size() - 2;
  // Dates are kept on the planning grid.
  const Instant date = *free.ways[chosen].schedule.ready_at + job.grid;
  for (Batch& batch : job.batches) batch.rules.ready_by = date;
  job.aim = Aim::sessions;
  const Plan plan = plan_for(job);
  CHECK(plan.schedule.sessions.size() == free.ways[chosen].schedule.sessions.size());
  for (const DueDate& due : due_dates(plan)) CHECK(due.ready_in_time());
}

TEST_CASE("a date that cannot be kept is told, and not asked of the other choices") {
  Job job = top_and_legs();
  for (Batch& batch : job.batches) batch.rules.ready_by = instant("2027-04-06T00:00Z");
  const Choices found = choices_for(job);
  CHECK(found.ways.size() == choices_for(top_and_legs()).ways.size());
  for (const Way& way : found.ways) {
    CHECK_FALSE(way.schedule.proof);
    CHECK_FALSE(due_dates(way).empty());
  }
  CHECK_FALSE(found.none_fewer);
}

TEST_CASE("several people have choices too, their sessions not proved; no time leaves no choice") {
  Job job = top_and_legs();
  job.people = {{"one", job.calendar, 0}, {"two", job.calendar, 0}};
  const Choices found = choices_for(job);
  CHECK_FALSE(found.none_fewer);
  for (const Way& way : found.ways) {
    REQUIRE(way.schedule.proof);
    CHECK_FALSE(way.schedule.proof->fewest_sessions);
  }
  Job never = top_and_legs();
  never.air = ConstantAir{celsius(2), humidity_percent(50)};
  const Choices none = choices_for(never);
  CHECK(none.ways.size() == 1);
  CHECK_FALSE(none.ways.front().schedule.ready_at);
}

}  // namespace
}  // namespace tackfree
