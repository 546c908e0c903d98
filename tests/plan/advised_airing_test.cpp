#include "tackfree/plan/advised_airing.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("the room is aired by the wider of its own habit and the better one") {
  Plan plan = judged_plan();
  plan.job.room.airing = AiringHabit{Opening::open, Opening::ajar, hours(8)};
  plan.room->proposed = AiringHabit{Opening::open, Opening::open, hours(5)};
  const auto airings = advised_airing(plan);
  REQUIRE(airings.size() == 1);
  REQUIRE(airings[0].size() == 2);
  CHECK(airings[0][0].opening == Opening::open);
  CHECK(airings[0][0].time.end == at("2027-04-10T20:10:00Z"));
  CHECK(airings[0][1].opening == Opening::ajar);
  CHECK(airings[0][1].time.end == at("2027-04-10T23:10:00Z"));
}

TEST_CASE("a habit that is enough is kept to, and a closed room is never aired") {
  Plan plan = judged_plan();
  plan.room->verdict = HabitVerdict::enough;
  CHECK(advised_airing(plan).empty());
  plan.job.room.airing = AiringHabit{Opening::open, Opening::closed, hours(0)};
  REQUIRE(advised_airing(plan).size() == 1);
  CHECK(advised_airing(plan)[0][0].time.end == at("2027-04-10T15:10:00Z"));
}

TEST_CASE("stretches that are aired apart are airings of their own") {
  CHECK(wider_of({{{at("2027-04-10T14:00:00Z"), at("2027-04-10T15:00:00Z")}, Opening::ajar}},
                 {{{at("2027-04-10T14:30:00Z"), at("2027-04-10T14:45:00Z")}, Opening::open}})
            .size() == 3);
}

}  // namespace tackfree
