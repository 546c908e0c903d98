#include "tackfree/words/batch_line.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("work of one evening is one group, the next day's another") {
  const Plan plan = small_plan();
  const auto groups = work_groups(plan, StepWords(plan), 0);
  REQUIRE(groups.size() == 3);
  CHECK(groups[0].mark == "sand");
  // Sanding ends at 13:15 and the coat begins at 14:10, the same day.
  CHECK(groups[1].mark == "sand, coat 1 back");
  CHECK(groups[1].time.begin == at("2027-04-10T13:00:00Z"));
  CHECK(groups[1].time.end == at("2027-04-10T14:40:00Z"));
  CHECK(groups[2].mark == "turn");
  CHECK(groups[1].whole == "sand bare wood, P120; coat 1 of 2, back");
}

TEST_CASE("a longer break makes two groups of one day") {
  Plan plan = small_plan();
  plan.schedule.steps[1].pieces = {{at("2027-04-10T15:10:00Z"), at("2027-04-10T15:40:00Z")}};
  CHECK(work_groups(plan, StepWords(plan), 0).size() == 4);
}

TEST_CASE("waits are told apart by what the person can do about them") {
  CHECK(kind_of(HeldBy::drying) == WaitKind::drying);
  CHECK(kind_of(HeldBy::coats_a_day) == WaitKind::drying);
  CHECK(kind_of(HeldBy::air) == WaitKind::air);
  CHECK(kind_of(HeldBy::calendar) == WaitKind::person);
  CHECK(words_for(HeldBy::quiet_hours) != words_for(HeldBy::dust));
}
