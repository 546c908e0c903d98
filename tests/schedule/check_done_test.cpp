#include "tackfree/schedule/check_done.hpp"

#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/check_shop_rules.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

/// A job with its bare wood sanded and the first coat of its first batch on, planned from that
/// evening on.
Scheduled half_done(Job job = sample_job()) {
  const Instant now = instant("2027-04-06T20:00Z");
  const Interval span{now, now + whole_minutes_up(job.horizon)};
  Problems problems;
  Scheduled made{std::move(job), AirSeries(), {}, {}};
  made.air = AirSeries::over(made.job.air, {now - one_day, span.end}, problems).value();
  const SurfaceTakeoff takeoff = take_off(made.job);
  made.list = operation_list(made.job, takeoff, job_volumes(made.job, takeoff, {1.0}));
  Instant at = now - Minutes(130);
  bool coated = false;
  for (Operation& op : made.list.operations) {
    if (coated && op.kind != OperationKind::sand_bare) continue;
    // What another batch in another room still has to do stays to come.
    if (coated && in_other_rooms(made.job, 0, op.batch)) continue;
    op.done = Done{.time = {at, at + Minutes(10)}};
    at += Minutes(10);
    coated = coated || op.coating;
  }
  made.schedule =
      make_schedule(made.job, made.list, made.air, drying_clocks(made.job, made.air), span);
  return made;
}

std::vector<std::string> broken(const Scheduled& made) {
  return broken_rules(made.job, made.list, made.air, made.schedule);
}

bool says(const std::vector<std::string>& told, std::string_view what) {
  return std::ranges::any_of(
      told, [&](const std::string& text) { return text.find(what) != std::string::npos; });
}

DatedStep& first_to_come(Scheduled& made, OperationKind kind) {
  for (DatedStep& step : made.schedule.steps) {
    const Operation& op = made.list.operations[step.operation];
    if (!op.done && op.kind == kind) return step;
  }
  throw std::runtime_error("no such step");
}

TEST_CASE("a schedule that goes on from done work breaks no rule") {
  const Scheduled made = half_done();
  CHECK(made.schedule.unplaced.empty());
  CHECK(broken(made) == std::vector<std::string>{});
}

TEST_CASE("done work that was moved, or stands in a session to come, is found") {
  Scheduled moved = half_done();
  moved.schedule.steps.front().pieces[0].begin -= Minutes(5);
  CHECK(says(broken(moved), "is done and was moved"));
  Scheduled in_session = half_done();
  for (DatedStep& step : in_session.schedule.steps)
    if (in_session.list.operations[step.operation].done) step.session = 0;
  CHECK(says(broken(in_session), "stands in a session to come"));
  Scheduled late = half_done();
  for (Operation& op : late.list.operations)
    if (op.done && op.coating) op.done->time = {late.schedule.span.begin, late.schedule.span.end};
  CHECK(says(broken(late), "is done after the plan's now"));
}

TEST_CASE("work before a done coat has dried is found, and so is a failed trial passed over") {
  Scheduled early = half_done();
  DatedStep& turn = first_to_come(early, OperationKind::turn_over);
  const Minutes sooner = turn.begin() - early.schedule.span.begin;
  for (Interval& piece : turn.pieces) piece = {piece.begin - sooner, piece.end - sooner};
  CHECK(says(broken(early), "does not wait for top/finish/coat-1/back/coat"));
  Scheduled failed = half_done();
  const Instant until = first_to_come(failed, OperationKind::turn_over).begin() + Minutes(1);
  for (Operation& op : failed.list.operations)
    if (op.done && op.coating) op.done->not_dry_before = until;
  CHECK(says(broken(failed), "does not wait for top/finish/coat-1/back/coat"));
}

TEST_CASE("a coat on one that may not be recoated yet is found, whatever was between them") {
  Scheduled made = half_done();
  for (Operation& op : made.list.operations) {
    if (op.done) continue;
    std::erase_if(op.waits, [&](const Wait& wait) {
      return wait.stage && wait.operation < made.list.operations.size() &&
             made.list.operations[wait.operation].coating;
    });
  }
  const Instant now = made.schedule.span.begin;
  made.schedule = make_schedule(made.job, made.list, made.air, drying_clocks(made.job, made.air),
                                {now, made.schedule.span.end});
  CHECK(says(broken(made), "goes on before"));
}

TEST_CASE("dust of sanding just done, on a coat right after it, is found") {
  Scheduled dusty = half_done();
  const Instant coat = first_to_come(dusty, OperationKind::coat).begin();
  for (Operation& op : dusty.list.operations)
    if (op.done && op.grit) op.done->time = {coat - Minutes(20), coat - Minutes(10)};
  for (DatedStep& step : dusty.schedule.steps)
    if (const auto& done = dusty.list.operations[step.operation].done) step.pieces = {done->time};
  CHECK(says(broken(dusty), "makes dust while"));
}

/// A top, and legs with so many coats that the whole waits for them; at work at all hours by day.
Job top_and_legs() {
  Job job = sample_job();
  add_legs(job);
  job.systems.push_back(job.systems[0]);
  job.systems[1].name = "many coats";
  job.systems[1].steps[0].coats = 8;
  job.batches[1].system = "many coats";
  for (auto& hours : job.calendar.weekly) hours = {{8 * 60, 23 * 60}};
  job.calendar.no_power_sanding.clear();
  return job;
}

const DatedStep& first_of_legs(const Scheduled& made, OperationKind kind) {
  for (const DatedStep& step : made.schedule.steps) {
    const Operation& op = made.list.operations[step.operation];
    if (op.batch == 1 && op.kind == kind && !op.done) return step;
  }
  throw std::runtime_error("no such step");
}

const DatedStep& coat_on(const Scheduled& made) {
  for (const DatedStep& step : made.schedule.steps)
    if (const Operation& op = made.list.operations[step.operation]; op.done && op.coating)
      return step;
  throw std::runtime_error("no coat is on");
}

TEST_CASE("a coat that is on takes its space until it can be handled") {
  Job job = top_and_legs();
  const Scheduled roomy = half_done(job);
  const auto handle = *coat_on(roomy).reaches[index_of(Stage::handle)];
  // With room for both, the legs are coated the same evening.
  REQUIRE(first_of_legs(roomy, OperationKind::coat).begin() < handle);
  // The top covers 1.08 m2, the legs 0.056 m2.
  job.rooms = {{"shed", square_metres(1.1), std::nullopt, 0}};
  for (Batch& batch : job.batches) batch.rules.room = 0;
  const Scheduled tight = half_done(job);
  const DatedStep& waiting = first_of_legs(tight, OperationKind::coat);
  CHECK(waiting.begin() >= handle);
  CHECK(
      std::ranges::any_of(waiting.held, [](const Held& held) { return held.by == HeldBy::space; }));
  CHECK(broken(tight) == std::vector<std::string>{});
  // The checker finds it by itself: the roomy schedule is none for the small shed.
  Scheduled crowded = roomy;
  crowded.job.rooms = job.rooms;
  crowded.job.batches = job.batches;
  CHECK(says(broken(crowded), "has no room to dry"));
  crowded.job.rooms[0].space = square_metres(1.2);
  CHECK_FALSE(says(broken(crowded), "has no room to dry"));
}

TEST_CASE("sanding keeps away from a coat that is on until it is dust-free, but in another room") {
  const Scheduled alone = half_done();
  const Instant dust_free = *coat_on(alone).reaches[index_of(Stage::dust_free)];
  Job job = top_and_legs();
  job.rooms = {{"shed", std::nullopt, std::nullopt, 0}, {"attic", std::nullopt, std::nullopt, 0}};
  job.batches[0].rules.room = 0;
  job.batches[1].rules.room = 1;
  Scheduled apart = half_done(job);
  CHECK(first_of_legs(apart, OperationKind::sand_bare).begin() < dust_free);
  CHECK(broken(apart) == std::vector<std::string>{});
  apart.job.batches[1].rules.room = 0;
  CHECK(says(broken(apart), "makes dust while"));
  // Planned for one room it waits.
  apart.schedule = make_schedule(apart.job, apart.list, apart.air,
                                 drying_clocks(apart.job, apart.air), apart.schedule.span);
  CHECK(first_of_legs(apart, OperationKind::sand_bare).begin() >= dust_free);
  CHECK(broken(apart) == std::vector<std::string>{});
}

TEST_CASE("trials say what they say, and nothing of coats that are not done") {
  Scheduled made = half_done();
  Operation* coat = nullptr;
  for (Operation& op : made.list.operations)
    if (op.done && op.coating) coat = &op;
  const Instant on = coat->done->time.end;
  CHECK_FALSE(tried(made.job, *coat, Stage::handle, on));
  coat->done->not_dry_before = on + 30 * one_hour;
  CHECK(tried(made.job, *coat, Stage::handle, on + 29 * one_hour) == false);
  CHECK_FALSE(tried(made.job, *coat, Stage::touch, on + 29 * one_hour));
  coat->done->not_dry_before.reset();
  coat->done->dry_since = on + one_hour;
  CHECK_FALSE(tried(made.job, *coat, Stage::handle, on + 2 * one_hour));
  CHECK(tried(made.job, *coat, Stage::handle, on + 30 * one_hour) == true);
  CHECK_FALSE(tried(made.job, *coat, Stage::light_use, on + 30 * one_hour));
}

}  // namespace
}  // namespace tackfree
