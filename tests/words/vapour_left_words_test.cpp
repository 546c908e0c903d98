#include "tackfree/words/vapour_left_words.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("sanding among the vapour of wet coats is sent outdoors, and no other work is") {
  Plan plan = judged_plan();
  const Figures figures(plan.job);
  DatedStep& sand = plan.schedule.steps[0];
  CHECK(vapour_left_words(plan, sand, figures).empty());
  sand.pieces = {{at("2027-04-10T16:00:00Z"), at("2027-04-10T16:30:00Z")}};
  plan.list.operations[0].power_sanding = false;
  CHECK(
      vapour_left_words(plan, sand, figures) ==
      "Vapour of the wet coats stays in the room until 1:00 pm by this estimate: sand outdoors, or "
      "later.");
  CHECK(vapour_left_words(plan, plan.schedule.steps[3], figures).empty());
  plan.room.reset();
  CHECK(vapour_left_words(plan, sand, figures).empty());
}

TEST_CASE("after isocyanates were sprayed the booth has to clear first, at no hour of ours") {
  Plan plan = judged_plan();
  plan.job.coatings[0].words.cautions = {"isocyanates"};
  plan.job.data.methods[0].sprayed = true;
  DatedStep& sand = plan.schedule.steps[0];
  sand.pieces = {{at("2027-04-10T20:00:00Z"), at("2027-04-10T20:30:00Z")}};
  plan.list.operations[0].power_sanding = false;
  CHECK(vapour_left_words(plan, sand, Figures(plan.job)) ==
        "Not before the booth has cleared of isocyanates, as the safety data sheet says.");
}
