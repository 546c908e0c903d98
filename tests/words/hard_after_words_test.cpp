#include "tackfree/words/hard_after_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

// Seen failing: the advice had hardware after 1 day where the plan counted 2, and named no finish.
TEST_CASE("what a coating bears is told with its name and its own figures") {
  Coating coating = small_coating("front finish");
  coating.label_after = {};
  CHECK(hard_after_words(coating).empty());
  coating.label_after.at(index_of(Stage::hardware)) = sourced(days(2), Origin::assumed);
  coating.label_after.at(index_of(Stage::full_cure)) = sourced(days(7), Origin::practice);
  CHECK(hard_after_words(coating) ==
        "front finish, in the label's air: hardware and doors on their stops after 2 days, things "
        "left standing on it after 7 days.");
}
