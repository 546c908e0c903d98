#include "tackfree/plan/pot_end.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("a pot lives as long as its label says, half as long in air that is 10 K warmer") {
  Plan plan = small_plan();
  const Instant begun = at("2027-04-10T14:10:00Z");
  CHECK_FALSE(pot_end(plan, 1, begun));
  plan.job.coatings[0].pot_life = sourced(hours(2), Origin::label);
  plan.job.coatings[0].label_temperature = celsius(15);  // that of the plan's air
  CHECK(pot_end(plan, 1, begun) == begun + Minutes(120));
  plan.job.coatings[0].label_temperature = celsius(5);
  CHECK(pot_end(plan, 1, begun) == begun + Minutes(60));
  CHECK_FALSE(pot_end(plan, 0, begun));  // sanding
}

}  // namespace tackfree
