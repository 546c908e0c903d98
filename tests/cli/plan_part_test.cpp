#include "tackfree/cli/plan_part.hpp"

#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("each part of a plan goes by its own word, and no other") {
  for (std::size_t part = 0; part < plan_part_words.size(); ++part)
    CHECK(plan_part_of(std::string(plan_part_words.at(part))) == static_cast<PlanPart>(part));
  CHECK(plan_part_of("days") == PlanPart::day_by_day);
  CHECK(plan_part_of("sources") == PlanPart::sources);
  CHECK_FALSE(plan_part_of("dayz"));
  CHECK(plan_part_fault("days").empty());
  CHECK(plan_part_fault("dayz").ends_with("sources; did you mean \"days\"?"));
}

}  // namespace tackfree
