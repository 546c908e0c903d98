#include "tackfree/text/area_text.hpp"

#include <algorithm>
#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the areas alone are said by grain and by side, with their notes") {
  const std::string text = area_text(small_areas({}, UnitSystem::metric));
  CHECK(holds(text, "AREAS TO COAT\n"));
  CHECK(holds(text, "THE SAME BY SIDE\n"));
  CHECK(holds(text, "film: \"seat\": 2 coats leave less dry film"));
  CHECK_FALSE(holds(text, "from the tins"));
}

TEST_CASE("no name, however hostile, gets control characters into the text") {
  SmallNames names;
  names.job = names.part = hostile_name();
  const std::string text = area_text(small_areas(names));
  CHECK(std::ranges::none_of(
      text, [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\n'; }));
}
