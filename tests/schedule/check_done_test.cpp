#include "tackfree/schedule/check_done.hpp"

#include "tackfree/schedule/check_schedule.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

/// The sample job with its bare wood sanded and its first coat on, planned from that evening on.
Scheduled half_done() {
  Job job = sample_job();
  const Instant now = instant("2027-04-06T20:00Z");
  const Interval span{now, now + whole_minutes_up(job.horizon)};
  Problems problems;
  Scheduled made{std::move(job), AirSeries(), {}, {}};
  made.air = AirSeries::over(made.job.air, {now - one_day, span.end}, problems).value();
  const SurfaceTakeoff takeoff = take_off(made.job);
  made.list = operation_list(made.job, takeoff, job_volumes(made.job, takeoff, {1.0}));
  Instant at = now - 3 * one_hour;
  for (Operation& op : made.list.operations) {
    op.done = Done{.time = {at, at + Minutes(10)}};
    at += Minutes(10);
    if (op.coating) break;
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

TEST_CASE("dust of sanding just done, on a coat right after it, is found") {
  Scheduled dusty = half_done();
  const Instant coat = first_to_come(dusty, OperationKind::coat).begin();
  for (Operation& op : dusty.list.operations)
    if (op.done && op.grit) op.done->time = {coat - Minutes(20), coat - Minutes(10)};
  for (DatedStep& step : dusty.schedule.steps)
    if (const auto& done = dusty.list.operations[step.operation].done) step.pieces = {done->time};
  CHECK(says(broken(dusty), "makes dust while"));
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
