#include "tackfree/words/how_lines.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a step without more to say has the lines of the data") {
  const Plan plan = small_plan();
  CHECK(how_lines(plan, plan.list.operations[1]) == plan.list.operations[1].how);
}

TEST_CASE("what becomes of the tool is told last, with the coat before the pause") {
  Plan plan = small_plan();
  plan.schedule.tool_rests = {{.step = 1,
                               .pause = {at("2027-04-10T14:40:00Z"), at("2027-04-10T16:40:00Z")},
                               .wrapped = true,
                               .cleaning = {}}};
  CHECK(how_lines(plan, plan.list.operations[1]).back().starts_with("Wrap the brush airtight"));
  CHECK(how_lines(plan, plan.list.operations[2]) == plan.list.operations[2].how);
}
