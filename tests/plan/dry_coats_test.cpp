#include "tackfree/plan/dry_coats.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("a session is told the coats that its work waits for, each once") {
  Plan plan = small_plan();
  const auto dry = [&] { return dry_coats(plan, work_sessions(plan.list, plan.schedule).back()); };
  REQUIRE(dry().size() == 1);
  CHECK(dry()[0] == DryCoat{1, Stage::handle, at("2027-04-11T03:40:00Z")});
  // Without the schedule's word, the coat's own.
  plan.schedule.steps[3].held.clear();
  plan.schedule.steps[1].reaches.at(index_of(Stage::handle)) = at("2027-04-11T03:00:00Z");
  plan.list.operations[4].waits.push_back(plan.list.operations[4].waits[0]);
  REQUIRE(dry().size() == 1);
  CHECK(dry()[0].at == at("2027-04-11T03:00:00Z"));
}

TEST_CASE("work that waits for other work alone is told no coat") {
  const Plan plan = small_plan();
  CHECK(dry_coats(plan, work_sessions(plan.list, plan.schedule).front()).empty());
}

}  // namespace tackfree
