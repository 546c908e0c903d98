#include "tackfree/plan/tonight.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

Plan evening(std::vector<LogEntry> entries, const char* now) {
  Problems problems;
  auto plan = make_plan(logged_job(std::move(entries)), instant(now), problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(plan);
  return std::move(*plan);
}

TEST_CASE("the work of tonight is what follows without a longer pause, and then comes the rest") {
  const Plan plan = evening({}, "2027-04-05T18:00Z");
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
  const Plan plan = evening({coat(1, back_1, "2027-04-06T19:00Z")}, "2027-04-06T20:00Z");
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
  const Plan warm = evening({}, "2027-04-05T18:00Z");
  CHECK(tonight(warm).air->failing.empty());
  CHECK_FALSE(tonight(warm).air->changes);
  LogEntry cold = entry(1, LogKind::air, "", "2027-04-05T18:00Z");
  cold.temperature = celsius(4);
  const Tonight now = tonight(evening({cold}, "2027-04-05T18:00Z"));
  REQUIRE(now.air);
  CHECK_FALSE(now.air->failing.empty());
  REQUIRE(now.air->changes);
  CHECK(*now.air->changes > instant("2027-04-05T18:00Z"));
}

}  // namespace
}  // namespace tackfree
