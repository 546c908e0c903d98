#include "tackfree/words/safety_lines.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

Caution caution(const std::string& key, const std::string& word) {
  return {.key = key,
          .word = word,
          .hazard = key + " hurts. Much.",
          .consequence = "Harm.",
          .avoid = "Mind it. Wear gloves, eye protection and long sleeves. More."};
}

TEST_CASE("each work has the warnings that it calls for, and no lesser words") {
  Plan plan = small_plan();
  plan.cautions = {{.text = caution("isocyanates", "DANGER")},
                   {.text = caution("oily_rags", "WARNING")},
                   {.text = caution("wood_dust", "WARNING")},
                   {.text = caution("skin_and_eyes", "CAUTION")}};
  plan.job.coatings[0].words.cautions = {"oily_rags", "isocyanates", "skin_and_eyes"};
  using Lines = std::vector<std::string>;
  const std::string what = " hurts. Mind it. Wear gloves, eye protection and long sleeves.";
  CHECK(safety_lines(plan, {0}) == Lines{"WARNING: wood_dust" + what});
  CHECK(safety_lines(plan, {1}) ==
        Lines{"DANGER: isocyanates" + what, "WARNING: oily_rags" + what});
  CHECK(safety_lines(plan, {0, 1}).size() == 3);
  CHECK(safety_lines(plan, {3}).empty());
  plan.list.operations[4].kind = OperationKind::wipe_off;
  CHECK(safety_lines(plan, {3}) == Lines{"WARNING: oily_rags" + what});
  plan.job.coatings[0].words.cautions.clear();
  CHECK(safety_lines(plan, {3}).empty());
}

TEST_CASE("what can light vapour is named before the tin is opened") {
  Plan plan = small_plan();
  plan.cautions = {{.text = caution("ignition", "WARNING")}};
  plan.job.coatings[0].words.cautions = {"ignition"};
  plan.job.room.ignition_sources = {"water heater"};
  plan.flammable = {{1, {at("2027-04-10T14:00:00Z"), at("2027-04-11T14:00:00Z")}}};
  REQUIRE(safety_lines(plan, {1}).size() == 1);
  CHECK(safety_lines(plan, {1})[0].starts_with(
      "WARNING: ignition hurts. Before you open the tin, turn off the water heater. Leave it off"));
  // The burning vapour of another session is told there.
  CHECK(holds(safety_lines(plan, {2}).at(0), "ignition hurts. Mind it."));
}

}  // namespace
}  // namespace tackfree
