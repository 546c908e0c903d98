#include "tackfree/evening/batch_waits.hpp"

#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <random>
#include <string>

#include "effort.hpp"
#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

std::vector<BatchWait> waits_of(const Plan& plan) {
  return batch_waits(plan, drying_clocks(plan.job, plan.air));
}

/// Every hour is for work and for the sander, so that nothing but the waits holds the next step.
Job open_all_hours(Job job) {
  for (auto& day : job.calendar.weekly) day = {{0, 24 * 60}};
  job.calendar.no_power_sanding.clear();
  return job;
}

/// Oil stain under waterborne varnish: the rule between the two asks for days on top of the label.
Job stained_job() {
  Job job = sample_job("oil_stain");
  job.coatings[0].name = "stain";
  job.coatings.push_back(named(class_of(job.data, "waterborne_polyurethane"), "water"));
  job.systems = {{"clear",
                  Wear::normal,
                  {{"stain", "stain", "wipe", 1, std::nullopt, 0},
                   {"clear", "water", "brush", 2, std::nullopt, 0}},
                  0}};
  job.batches[0].sides = Sides::on_points;
  job.history.file = "sample.log.jsonl";
  return job;
}

const std::string stain_1 = "top/stain/coat-1/both/coat";

TEST_CASE("the rule between two classes counts, not the label of the one below alone") {
  Job job = stained_job();
  job.history.entries = {coat(1, stain_1, "2027-04-05T20:00Z")};
  const Plan plan = planned_again(std::move(job), "2027-04-07T19:00Z");
  const auto waits = waits_of(plan);
  REQUIRE(waits.size() == 1);
  CHECK(waits[0].by == HeldBy::drying);
  CHECK(waits[0].wait.dry_for);
  REQUIRE(waits[0].until);
  // Dry to recoat by its label long before.
  const auto dry = plan.schedule.steps[0].reaches[index_of(Stage::recoat)];
  CHECK(*waits[0].until > instant("2027-04-08T20:00Z"));
  CHECK((!dry || *waits[0].until > *dry));
}

TEST_CASE(
    "after wrinkles the hour is that of the repair, through the film that is twice as thick") {
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z")};
  std::vector<LogEntry> run = log;
  run.push_back(fault(2, back_1, "2027-04-06T20:00Z", Fault::wrinkling));
  const Plan without = planned_log(log, "2027-04-06T20:30Z");
  const Plan with = planned_log(run, "2027-04-06T20:30Z");
  const auto before = waits_of(without), after = waits_of(with);
  REQUIRE(before.size() == 1);
  REQUIRE(after.size() == 1);
  CHECK(with.list.operations[after[0].operation].kind == OperationKind::repair);
  CHECK(after[0].wait.films == 2);
  CHECK(*after[0].until > *before[0].until);
}

TEST_CASE("a run on a hidden back is not what a batch waits for first: turning is") {
  const Plan plan = planned_log(
      {coat(1, back_1, "2027-04-06T19:00Z"), fault(2, back_1, "2027-04-06T20:00Z", Fault::runs)},
      "2027-04-06T20:30Z");
  const auto waits = waits_of(plan);
  REQUIRE(waits.size() == 1);
  CHECK(plan.list.operations[waits[0].operation].kind == OperationKind::turn_over);
}

TEST_CASE("a batch that comes after a test board waits until the board's coat is dry to handle") {
  Job job = sample_job();
  add_legs(job);
  job.batches[1].after = "top";
  job.history.file = "sample.log.jsonl";
  const Plan first = planned_again(job, "2027-04-05T18:00Z");
  int id = 0;
  for (const Operation& op : first.list.operations)
    if (op.batch == 1 && op.kind == OperationKind::sand_bare)
      job.history.entries.push_back(entry(++id, LogKind::done, op.key, "2027-04-05T18:00Z"));
  const Plan plan = planned_again(job, "2027-04-05T18:05Z");
  const auto waits = waits_of(plan);
  REQUIRE(waits.size() == 1);
  CHECK(plan.list.operations[waits[0].operation].kind == OperationKind::coat);
  CHECK(waits[0].by == HeldBy::previous_step);
  CHECK(plan.list.operations[waits[0].wait.operation].batch == 0);
  for (const DatedStep& step : plan.schedule.steps)
    if (step.operation == waits[0].wait.operation)
      CHECK(waits[0].until == step.reaches[index_of(Stage::handle)]);
}

TEST_CASE("sanding waits for the coats beside it that are wet to dust") {
  Job job = sample_job();
  add_legs(job);
  job.history.file = "sample.log.jsonl";
  job.history.entries = {coat(1, back_1, "2027-04-06T19:00Z")};
  const Plan plan = planned_again(std::move(job), "2027-04-06T19:10Z");
  const auto waits = waits_of(plan);
  const auto legs = std::ranges::find_if(waits, [&](const BatchWait& wait) {
    return plan.list.operations[wait.operation].batch == 1;
  });
  REQUIRE(legs != waits.end());
  CHECK(legs->by == HeldBy::dust);
  CHECK(*legs->until > plan.now);
}

TEST_CASE(
    "a coat of done sanding waits until the dust has settled, and a date of the person's counts") {
  Job job = sample_job();
  job.batches[0].rules.not_before = instant("2027-04-12T00:00Z");
  const Plan plan = planned_again(std::move(job), "2027-04-05T18:00Z");
  const auto waits = waits_of(plan);
  REQUIRE(waits.size() == 1);
  CHECK(waits[0].by == HeldBy::not_before);
  CHECK(waits[0].until == instant("2027-04-12T00:00Z"));
}

/// Logs what the plan had done by an hour, with a fault or a failed trial here and there.
std::vector<LogEntry> log_until(const Plan& plan, Instant until, std::mt19937& random) {
  std::vector<LogEntry> log;
  int id = 0;
  for (const DatedStep& step : plan.schedule.steps) {
    const Operation& op = plan.list.operations[step.operation];
    if (step.end() > until || op.kind == OperationKind::dust_off) continue;
    const bool coats = op.kind == OperationKind::coat;
    log.push_back(
        entry(++id, coats ? LogKind::coat : LogKind::done, op.key, iso_utc(step.end()).c_str()));
    if (!coats || step.end() + Minutes(90) > until) continue;
    const auto what = random() % 6;
    const std::string then = iso_utc(step.end() + Minutes(60));
    if (what == 0) log.push_back(fault(++id, op.key, then.c_str(), Fault::runs));
    if (what == 1) log.push_back(fault(++id, op.key, then.c_str(), Fault::fisheyes));
    if (what == 2) log.push_back(thumb(++id, op.key, then.c_str(), false));
  }
  return log;
}

TEST_CASE(
    "no step is planned before its batch's wait is over, nor later than it where nothing else "
    "holds") {
  std::mt19937 random(17);
  int compared = 0;
  for (int round = 0; round < std::max(4, cases(10)); ++round) {
    Job job = round % 3 == 2 ? stained_job() : sample_job();
    if (round % 2 == 1) job = open_all_hours(std::move(job));
    job.horizon = days(40);
    job.history.file = "sample.log.jsonl";
    const Plan whole = planned_again(job, "2027-04-05T17:00Z");
    const Instant now = whole.now + Minutes(5 * static_cast<int>(random() % (12 * 24 * 6)));
    job.history.entries = log_until(whole, now, random);
    const Plan plan = planned_again(job, iso_utc(now).c_str());
    for (const BatchWait& wait : waits_of(plan)) {
      CAPTURE(plan.list.operations[wait.operation].key);
      CAPTURE(iso_utc(plan.now));
      const auto step =
          std::ranges::find(plan.schedule.steps, wait.operation, &DatedStep::operation);
      if (step == plan.schedule.steps.end() || !wait.until) continue;
      CHECK(step->begin() >= *wait.until);
      if (round % 2 == 0) continue;
      // Set-up, dusting off and the grid.
      ++compared;
      CHECK(step->begin() <= std::max(*wait.until, plan.now) + Minutes(45));
    }
  }
  CHECK(compared > 0);
}

}  // namespace
}  // namespace tackfree
