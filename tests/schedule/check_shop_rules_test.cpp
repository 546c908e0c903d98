#include "tackfree/schedule/check_shop_rules.hpp"

#include "tackfree/schedule/check_schedule.hpp"

#include <algorithm>
#include <functional>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

Date day(const char* text) { return parse_date(text).value(); }

bool shop_breach(const testing::Scheduled& s, const std::string& what) {
  const auto broken = broken_rules(s.job, s.list, s.air, s.schedule);
  return std::any_of(broken.begin(), broken.end(),
                     [&](const std::string& rule) { return rule.find(what) != std::string::npos; });
}

/// Two people, one of them in the mornings only, a room with space for the top alone, and dates.
Job shop_job() {
  Job job = testing::sample_job();
  testing::add_legs(job);
  for (auto& hours : job.calendar.weekly) hours = {{8 * 60, 12 * 60}, {13 * 60, 17 * 60}};
  job.calendar.no_power_sanding.clear();
  job.people = {{"A", job.calendar, 0}, {"B", job.calendar, 0}};
  for (auto& hours : job.people[1].hours.weekly) hours = {{9 * 60, 12 * 60}};
  job.rooms = {{"shed", square_metres(1.1), std::nullopt, 0}};
  for (Batch& batch : job.batches) batch.rules.room = 0;
  job.batches[0].rules.pins = {{"finish", 2, Side::show, day("2027-04-14"), {8 * 60, 12 * 60}, 0}};
  job.batches[0].rules.no_coating_on = {day("2027-04-09")};
  job.batches[1].rules.not_before = testing::instant("2027-04-07T09:30Z");
  return job;
}

TEST_CASE("each planted breach of a shop's rules is found") {
  const testing::Scheduled good = testing::scheduled(shop_job());
  REQUIRE(good.schedule.unplaced.empty());
  REQUIRE(broken_rules(good.job, good.list, good.air, good.schedule).empty());
  struct Breach {
    const char* said;
    std::function<void(testing::Scheduled&)> plant;
  };
  const auto dated = [](testing::Scheduled& s, const std::string& key) -> DatedStep& {
    for (DatedStep& step : s.schedule.steps)
      if (s.list.operations[step.operation].key == key) return step;
    throw std::runtime_error("no step " + key);
  };
  const Breach breaches[] = {
      {"is not put on when it is set for",
       [](auto& s) { s.job.batches[0].rules.pins[0].between.begin = 11 * 60 + 55; }},
      {"is not put on when it is set for",
       [](auto& s) { s.job.batches[0].rules.pins[0].on = day("2027-04-15"); }},
      {"is put on on a day without coating",
       [](auto& s) { s.job.batches[0].rules.no_coating_on = {day("2027-04-14")}; }},
      {"is done before its batch may be begun",
       [](auto& s) { s.job.batches[1].rules.not_before = testing::instant("2027-05-20T00:00Z"); }},
      {"is done by nobody in particular", [](auto& s) { s.schedule.steps[3].by.clear(); }},
      {"is done by somebody who is away",
       [](auto& s) { s.job.people[0].hours.days_off = {day("2027-04-14")}; }},
      {"is done by somebody who is away",
       [](auto& s) {
         BusyEvent busy;
         busy.begin = {day("2027-04-06"), 0};
         busy.days = 60;
         s.job.people[0].hours.busy = {busy};
       }},
      {"is done outside working hours",
       [](auto& s) {
         for (Person& person : s.job.people) person.hours.days_off = {day("2027-04-14")};
       }},
      {"two things are done at",
       [&](auto& s) {
         // Both at once, and both by the same.
         DatedStep& legs = dated(s, "legs/finish/coat-1/both/coat");
         DatedStep& top = dated(s, "top/finish/coat-2/show/coat");
         legs.pieces = top.pieces;
         legs.by = top.by;
       }},
      {"has no room to dry", [](auto& s) { s.job.rooms[0].space = square_metres(1.0); }},
      {"is not dry to handle when the plan says so",
       [&](auto& s) {
         auto& at = dated(s, "top/finish/coat-2/show/coat").reaches[index_of(Stage::handle)];
         at = *at - Minutes(30);
       }},
  };
  for (const Breach& breach : breaches) {
    CAPTURE(breach.said);
    testing::Scheduled spoilt = good;
    breach.plant(spoilt);
    CHECK(shop_breach(spoilt, breach.said));
  }
}

TEST_CASE("a tool cleaned while its person does other work is found, and so is one that is not") {
  testing::Scheduled s = testing::scheduled(testing::sample_job("two_component_polyurethane"));
  REQUIRE(broken_rules(s.job, s.list, s.air, s.schedule).empty());
  const DatedStep& coat = s.schedule.steps[s.schedule.sessions[0].steps[0]];
  ToolRest rest{.dated_step = s.schedule.sessions[0].steps[0], .pause = {}, .cleaning = {}};
  rest.cleaning = {coat.begin(), coat.end()};
  s.schedule.tool_rests = {rest};
  CHECK(shop_breach(s, "two things are done at"));
  s.schedule.tool_rests.clear();
  s.schedule.sessions[0].steps.push_back(s.schedule.sessions[1].steps[0]);
  CHECK(shop_breach(s, "leaves its tool to harden"));
}

TEST_CASE("a coat that does not wait for every lot of the batch it comes after is found") {
  Job job = testing::sample_job();
  testing::add_legs(job);
  testing::Scheduled s = testing::scheduled(job);
  REQUIRE(broken_rules(s.job, s.list, s.air, s.schedule).empty());
  s.job.batches[1].after = "tops";
  CHECK_FALSE(shop_breach(s, "legs/finish/coat-1/both/coat does not wait for"));
  s.job.batches[0].rules.lot_of = "tops";
  CHECK(shop_breach(s,
                    "legs/finish/coat-1/both/coat does not wait for "
                    "top/finish/coat-3/show/coat"));
  s.job.batches[1].after = "top";
  CHECK(shop_breach(s,
                    "legs/finish/coat-1/both/coat does not wait for "
                    "top/finish/coat-3/show/coat"));
}

TEST_CASE("batches fill a room to the hundredth in which planner and checker count alike") {
  Job job = testing::sample_job();
  testing::add_legs(job);
  job.rooms = {{"shed", square_metres(2.701), std::nullopt, 0}};
  job.batches[0].rules = {.room = 0, .space = square_metres(1.355)};
  job.batches[1].rules = {.room = 0, .space = square_metres(1.350)};
  const testing::Scheduled s = testing::scheduled(job);
  CHECK(s.schedule.unplaced.empty());
  CHECK(broken_rules(s.job, s.list, s.air, s.schedule).empty());
}

TEST_CASE("dust in another room does no harm, in the same room it does") {
  testing::Scheduled s = testing::scheduled(shop_job());
  const DatedStep* coat = s.step("top/finish/coat-2/show/coat");
  REQUIRE(coat != nullptr);
  for (DatedStep& step : s.schedule.steps)
    if (s.list.operations[step.operation].key == "legs/finish/coat-2/both/sand-p240")
      step.pieces = {{coat->end() + Minutes(5), coat->end() + Minutes(10)}};
  CHECK(shop_breach(s, "makes dust while"));
  s.job.rooms.push_back({"attic", std::nullopt, std::nullopt, 0});
  s.job.batches[1].rules.room = 1;
  CHECK_FALSE(shop_breach(s, "makes dust while"));
}

TEST_CASE(
    "a pinned coat goes on on its day, and what is due sooner than it can be is planned late") {
  Job job = testing::sample_job();
  job.batches[0].rules.pins = {{"finish", 2, Side::back, day("2027-04-21"), {0, 24 * 60}, 0}};
  const testing::Scheduled pinned = testing::scheduled(job);
  REQUIRE(pinned.schedule.unplaced.empty());
  CHECK(iso_utc(pinned.step("top/finish/coat-2/back/coat")->begin()).substr(0, 10) == "2027-04-21");
  job.batches[0].rules.ready_by = testing::instant("2027-04-20T00:00Z");
  const testing::Scheduled late = testing::scheduled(job);
  CHECK(late.schedule.unplaced.empty());
  CHECK(late.schedule.ready_at == pinned.schedule.ready_at);
  CHECK_FALSE(late.schedule.proof);
}

TEST_CASE("of two batches that are late, the one that can be in time is, though the other is not") {
  Job job = testing::sample_job();
  testing::add_legs(job);
  const auto light = [](const testing::Scheduled& s, std::size_t batch) {
    for (const DatedOutcome& outcome : s.schedule.outcomes)
      if (outcome.batch == batch && outcome.stage == Stage::light_use) return *outcome.at;
    throw std::runtime_error("no light use");
  };
  // Due an hour before the free plan has them ready: the legs can be, alone.
  job.batches[1].rules.ready_by = light(testing::scheduled(job), 1) - Minutes(60);
  const testing::Scheduled alone = testing::scheduled(job);
  REQUIRE(alone.schedule.unplaced.empty());
  REQUIRE(light(alone, 1) <= *job.batches[1].rules.ready_by);
  job.batches[0].rules.ready_by = testing::instant("2027-04-06T00:00Z");
  const testing::Scheduled both = testing::scheduled(job);
  CHECK(both.schedule.unplaced.empty());
  CHECK(light(both, 1) <= *job.batches[1].rules.ready_by);
  CHECK(light(both, 0) > *job.batches[0].rules.ready_by);
  CHECK(broken_rules(both.job, both.list, both.air, both.schedule).empty());
}

}  // namespace
}  // namespace tackfree
