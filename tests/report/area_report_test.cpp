#include "tackfree/report/area_report.hpp"

#include <algorithm>
#include <string>

#include "report/small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("the areas alone are said by grain and by side, with their notes") {
  const std::string text = area_text(small_plan({}, UnitSystem::metric));
  CHECK(holds(text, "AREAS TO COAT\n"));
  CHECK(holds(text, "THE SAME BY SIDE\n"));
  CHECK(holds(text, "film: The film is thin"));
  CHECK_FALSE(holds(text, "from the tins"));
}

TEST_CASE("the JSON of the areas has the parts of the JSON plan and the notes") {
  const auto json = nlohmann::json::parse(area_json(small_plan()));
  CHECK(json["tackfree_area"] == 1);
  CHECK(json["job"]["name"] == "Hall bench");
  CHECK(json["parts"].size() == 2);
  CHECK(json["parts"][0]["surfaces"][0]["area_m2"] == 0.5);
  CHECK(json["notes"][0]["about"] == "film");
}

TEST_CASE("no name, however hostile, gets control characters into the text") {
  SmallNames names;
  names.job = names.part = hostile_name();
  const std::string text = area_text(small_plan(names));
  CHECK(std::ranges::none_of(
      text, [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\n'; }));
  CHECK(nlohmann::json::accept(area_json(small_plan(names))));
}
