#include "tackfree/words/how_lines.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a step without more to say has the lines of the data") {
  const Plan plan = small_plan();
  CHECK(how_lines(plan, plan.list.operations[1]) == plan.list.operations[1].how);
}

// Seen failing: nine coats of isocyanates were to be sprayed without a word on booth or air.
TEST_CASE("before isocyanates the booth and the air come first, or gloves where they are brushed") {
  Plan plan = small_plan();
  const Operation& coat = plan.list.operations[1];
  plan.job.data.texts.how = {{"before_isocyanates_sprayed", {"Only in a booth."}},
                             {"before_isocyanates", {"Gloves."}},
                             {"before_sanding", {"Mask on."}}};
  CHECK(how_lines(plan, coat) == coat.how);
  plan.job.coatings[0].words.cautions = {"isocyanates"};
  CHECK(how_lines(plan, coat).front() == "Gloves.");
  plan.job.data.methods[0].sprayed = true;
  CHECK(how_lines(plan, coat).front() == "Only in a booth.");
  CHECK(how_lines(plan, plan.list.operations[0]).front() == "Mask on.");
}

TEST_CASE("several pots and portions are told, in the units of the job") {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    Plan plan = small_plan({}, units);
    Operation& coat = plan.list.operations[1];
    coat.pots = 1;
    coat.portions = 1;
    CHECK(how_lines(plan, coat) == coat.how);
    coat.pot_life = hours(1.5);
    coat.pots = 2;
    coat.portions = 3;
    coat.area = square_metres(11.52);
    const auto lines = how_lines(plan, coat);
    REQUIRE(lines.size() == coat.how.size() + 2);
    CHECK(
        lines[lines.size() - 2] ==
        "Mix 2 pots, one after the other: in the warmest air of this plan each is good for 1 h 30 "
        "min only.");
    CHECK(lines.back().starts_with(units == UnitSystem::us ? "In 3 portions of 41.3 sq ft: put one"
                                                           : "In 3 portions of 3.84 m\u00b2: put"));
  }
}

TEST_CASE("what becomes of the tool is told last, with the coat before the pause") {
  Plan plan = small_plan();
  plan.schedule.tool_rests = {{.dated_step = 1,
                               .pause = {at("2027-04-10T14:40:00Z"), at("2027-04-10T16:40:00Z")},
                               .wrapped = true,
                               .cleaning = {}}};
  CHECK(how_lines(plan, plan.list.operations[1]).back().starts_with("Wrap the brush airtight"));
  CHECK(how_lines(plan, plan.list.operations[2]) == plan.list.operations[2].how);
}
