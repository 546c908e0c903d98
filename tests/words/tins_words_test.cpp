#include "tackfree/words/tins_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("what to buy is one line: of one product, of all, and nothing where nothing is short") {
  Plan plan = small_plan({}, UnitSystem::metric);
  CHECK(tins_text(plan.shopping.coatings.at(0)) == "1 x 1 qt");
  CHECK(all_tins_text(plan) == "1 x 1 qt varnish; 1 x 1 pt mineral spirits");
  plan.shopping.thinners.clear();
  plan.shopping.coatings[0].tins = {{0}, Volume(), 0, true};
  CHECK(tins_text(plan.shopping.coatings.at(0)) == "nothing");
  CHECK(all_tins_text(plan) == "nothing");
}
