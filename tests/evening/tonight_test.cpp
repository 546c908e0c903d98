#include "tackfree/evening/tonight.hpp"

#include "tackfree/plan/make_plan.hpp"
#include "tackfree/schedule/work_sessions.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

std::size_t operation_step(const Plan& plan, std::size_t operation) {
  const auto& steps = plan.schedule.steps;
  return static_cast<std::size_t>(std::ranges::find(steps, operation, &DatedStep::operation) -
                                  steps.begin());
}

TEST_CASE("the work of tonight is what follows without a longer pause, and then comes the rest") {
  const Plan plan = planned_log({}, "2027-04-05T18:00Z");
  const Tonight now = tonight(plan);
  REQUIRE_FALSE(now.work.empty());
  CHECK(now.stretch.begin == plan.schedule.steps[now.work.front()].begin());
  for (const std::size_t step : now.work)
    CHECK(plan.schedule.steps[step].begin() < instant("2027-04-05T22:00Z"));
  REQUIRE(now.then);
  CHECK(now.then_at >= now.stretch.end);
  // Whatever comes next in the plan, be it the rest of what was begun.
  for (const DatedStep& step : plan.schedule.steps)
    for (const Interval& piece : step.pieces)
      CHECK_FALSE((piece.begin >= now.stretch.end && piece.begin < now.then_at));
  CHECK(now.waits.empty());
  CHECK_FALSE(now.dust_free_at);
}

TEST_CASE("a wet coat is told with its share, and dust is kept off it") {
  const Plan plan = planned_log({coat(1, back_1, "2027-04-06T19:00Z")}, "2027-04-06T20:00Z");
  const Tonight now = tonight(plan);
  REQUIRE(now.waits.size() == 1);
  CHECK(now.waits[0].wait.stage == Stage::handle);
  REQUIRE(now.waits[0].share);
  CHECK(*now.waits[0].share > 0.05);
  CHECK(*now.waits[0].share < 0.3);
  CHECK(now.waits[0].until == plan.schedule.steps[operation_step(plan, now.waits[0].wait.operation)]
                                  .reaches[index_of(Stage::handle)]);
  REQUIRE(now.dust_free_at);
  CHECK(*now.dust_free_at > plan.now);
}

TEST_CASE("the air is not told of a coat that must wait for days") {
  const Plan plan = planned_log({coat(1, back_1, "2027-04-06T19:00Z")}, "2027-04-06T19:10Z");
  CHECK_FALSE(tonight(plan).air);
}

TEST_CASE("airing goes by the clock from the coat as it was logged") {
  Job job = logged_job({coat(1, back_1, "2027-04-06T20:50Z")});
  job.room.airing = AiringHabit{Opening::ajar, Opening::ajar, hours(2)};
  const auto spans = [&](const char* now) { return tonight(planned_again(job, now)).airing.spans; };
  REQUIRE(spans("2027-04-06T21:30Z").size() == 1);
  CHECK(spans("2027-04-06T21:30Z")[0].time.end == instant("2027-04-06T22:50Z"));
  CHECK(spans("2027-04-06T22:50Z").empty());
}

TEST_CASE("airing that is too little for the plan is told, with the proposed one by the clock") {
  Job job = logged_job({});
  job.room.volume = cubic_metres(25);
  job.room.airing = AiringHabit{Opening::ajar, Opening::ajar, hours(0.5)};
  Plan plan = planned_again(job, "2027-04-05T18:00Z");
  REQUIRE(plan.room);
  REQUIRE(plan.room->verdict == HabitVerdict::too_little);
  const Plan evening = planned_again(
      [&] {
        job.history.entries = {coat(1, back_1, "2027-04-06T19:00Z")};
        return job;
      }(),
      "2027-04-06T19:05Z");
  const AiringNow airing = tonight(evening).airing;
  CHECK(airing.spans.size() == 1);
  CHECK(airing.proposed.empty() != evening.room->proposed.has_value());
}

TEST_CASE("a batch is ready when it really was, not when it is asked about") {
  std::vector<LogEntry> log;
  const Plan whole = planned_again(sample_job(), "2027-04-05T17:00Z");
  int id = 0;
  for (const DatedStep& step : whole.schedule.steps) {
    const Operation& op = whole.list.operations[step.operation];
    const bool coats = op.kind == OperationKind::coat;
    if (coats || op.kind == OperationKind::fit_hardware)
      log.push_back(
          entry(++id, coats ? LogKind::coat : LogKind::done, op.key, iso_utc(step.end()).c_str()));
  }
  const Plan later = planned_log(log, "2027-06-10T10:00Z");
  REQUIRE(whole.schedule.ready_at);
  CHECK(later.schedule.ready_at == whole.schedule.ready_at);
  const Tonight now = tonight(later);
  REQUIRE(now.uses.size() == 1);
  CHECK(now.uses[0].light_use == whole.schedule.ready_at);
  CHECK(now.uses[0].full_cure);
  CHECK(now.waits.empty());
}

TEST_CASE("wiping off has its minute, planned and just put on, and a pot its end") {
  Job oil = sample_job("hardwax_oil");
  oil.history.file = "sample.log.jsonl";
  oil.history.entries = {coat(1, "top/finish/coat-1/back/coat", "2027-04-06T19:00Z")};
  const Tonight wiping = tonight(planned_again(oil, "2027-04-06T19:02Z"));
  REQUIRE_FALSE(wiping.clocks.empty());
  // Left for 10 minutes: class figure, common practice, no source.
  CHECK(wiping.clocks[0].wipe_off == instant("2027-04-06T19:10Z"));
  Job two_part = sample_job("two_component_polyurethane");
  two_part.history.file = "sample.log.jsonl";
  two_part.history.entries = {coat(1, "top/finish/coat-1/back/coat", "2027-04-06T19:00Z")};
  two_part.history.entries[0].began_at = instant("2027-04-06T18:40Z");
  const Tonight mixed = tonight(planned_again(two_part, "2027-04-06T19:30Z"));
  REQUIRE_FALSE(mixed.clocks.empty());
  // Pot life of 3 h: typical of labels.
  CHECK(mixed.clocks[0].pot_until == instant("2027-04-06T21:40Z"));
  two_part.air = ConstantAir{celsius(29), humidity_percent(50)};
  const Tonight hot = tonight(planned_again(two_part, "2027-04-06T19:30Z"));
  REQUIRE_FALSE(hot.clocks.empty());
  // 180 min halved for every 10 K over 23 C: 118.8 min. Source: UFGS 09971, 3.7.1.3.
  CHECK(hot.clocks[0].pot_until == instant("2027-04-06T20:39Z"));
}

TEST_CASE("the air of now is judged for the next coat, and when it changes") {
  const Plan warm = planned_log({}, "2027-04-05T18:00Z");
  CHECK(tonight(warm).air->failing.empty());
  CHECK_FALSE(tonight(warm).air->changes);
  LogEntry cold = entry(1, LogKind::air, "", "2027-04-05T18:00Z");
  cold.temperature = celsius(4);
  const Tonight now = tonight(planned_log({cold}, "2027-04-05T18:00Z"));
  REQUIRE(now.air);
  CHECK_FALSE(now.air->failing.empty());
  REQUIRE(now.air->changes);
  CHECK(*now.air->changes > instant("2027-04-05T18:00Z"));
}

// Read at 6:10 pm, asked at 6:15: no coat is on yet, and the room is as cold as it was.
TEST_CASE("a reading of five minutes ago counts before the first coat") {
  LogEntry cold = entry(1, LogKind::air, "", "2027-04-05T18:10Z");
  cold.temperature = celsius(4);
  cold.humidity = humidity_percent(86);
  const Tonight now = tonight(planned_log({cold}, "2027-04-05T18:15Z"));
  CHECK(now.temperature.in_celsius() < 5);
  REQUIRE(now.air);
  CHECK_FALSE(now.air->failing.empty());
}

}  // namespace
}  // namespace tackfree
