#include "tackfree/plan/tonight.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

TEST_CASE("the work of tonight is what follows without a longer pause, and then comes the rest") {
  const Plan plan = planned_log({}, "2027-04-05T18:00Z");
  const Tonight now = tonight(plan);
  REQUIRE_FALSE(now.work.empty());
  CHECK(now.stretch.begin == plan.schedule.steps[now.work.front()].begin());
  for (const std::size_t step : now.work)
    CHECK(plan.schedule.steps[step].begin() < instant("2027-04-05T22:00Z"));
  REQUIRE(now.then);
  CHECK(plan.schedule.steps[*now.then].begin() > now.stretch.end + Minutes(30));
  CHECK(now.waiting.empty());
  CHECK_FALSE(now.dust_free_at);
}

TEST_CASE("a wet coat is told with its share, and dust is kept off it") {
  const Plan plan = planned_log({coat(1, back_1, "2027-04-06T19:00Z")}, "2027-04-06T20:00Z");
  const Tonight now = tonight(plan);
  REQUIRE(now.waiting.size() == 1);
  CHECK(now.waiting[0].towards == Stage::handle);
  CHECK(now.waiting[0].share > 0.05);
  CHECK(now.waiting[0].share < 0.3);
  CHECK(now.waiting[0].ready ==
        plan.schedule.steps[now.waiting[0].step].reaches[index_of(Stage::handle)]);
  REQUIRE(now.dust_free_at);
  CHECK(*now.dust_free_at > plan.now);
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
