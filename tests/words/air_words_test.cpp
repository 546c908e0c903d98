#include "tackfree/words/air_words.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a source goes by its name, typical months without one by the month they begin with") {
  CHECK(source_words({.name = "forecast"}) == "forecast");
  CHECK(source_words({.typical_month = 4}) == "typical April values");
  CHECK(source_words({.name = "what is usual", .typical_month = 4}) == "what is usual");
  CHECK(source_words({}).empty());
}

TEST_CASE("a month without values of its own is told with the one that serves for it") {
  CHECK(held_month_words({.month = 6, .held = 5}) ==
        "June has no typical values of its own: the plan uses those of May for it.");
}
