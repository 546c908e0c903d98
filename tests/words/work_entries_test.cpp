#include "tackfree/words/work_entries.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("work stands in order of time, with set-up and clean-up in their place") {
  const Plan plan = small_plan();
  const std::vector<WorkEntry> all = work_entries(plan, StepWords(plan));
  REQUIRE(all.size() == 7);
  CHECK(all[0].what == "seat: sand bare wood, P120 (1 of 2)");
  CHECK_FALSE(all[1].first_piece);
  CHECK(all[2].what == "set up: varnish, brush");
  CHECK(all[2].step == nullptr);
  CHECK(all[3].what == "seat: coat 1 of 2, back, at\u00A059\u00A0\u00b0F");
  CHECK(all[5].what == "clean up: varnish, brush");
}

// Seen failing: set-up and coats stood there with no condition, under a line that forbade them.
TEST_CASE("set-up and coats that spray isocyanates say what they are bound to") {
  Plan plan = small_plan();
  plan.job.coatings[0].words.cautions = {"isocyanates"};
  plan.job.data.methods[0].sprayed = true;
  const std::vector<WorkEntry> all = work_entries(plan, StepWords(plan));
  for (const std::size_t entry : {2u, 3u, 4u})
    CHECK(all[entry].what.ends_with("; only in a booth, on supplied air"));
  CHECK_FALSE(holds(all[5].what, "booth"));
}

TEST_CASE("a coat that is wiped off in portions says in how many") {
  Plan plan = small_plan();
  plan.list.operations[1].portions = 5;
  CHECK(holds(work_entries(plan, StepWords(plan))[3].what,
              ", in 5 portions, each wiped off before the next"));
  plan.list.operations[1].portions = 1;
  CHECK_FALSE(holds(work_entries(plan, StepWords(plan))[3].what, "portion"));
}

TEST_CASE("work is told by its kind, set-up and clean-up too") {
  CHECK(words_for(OperationKind::sand_bare) == "sand bare");
  CHECK(words_for(SessionWork::set_up) == "set up");
  CHECK(words_for(SessionWork::clean_up) == "clean up");
}
