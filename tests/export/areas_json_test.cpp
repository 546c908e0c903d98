#include "tackfree/export/areas_json.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("parts come with their surfaces, tape and material, and whether they are estimated") {
  Plan plan = small_plan();
  plan.job.parts[0].material = Material::fibreboard;
  plan.job.parts[1].shape = EstimatedFrame{};
  plan.takeoff.surfaces[3].face = Face::inside;
  plan.takeoff.surfaces[3].grain = Grain::fibreboard_edge;
  nlohmann::ordered_json json;
  put_areas(json, plan.job, plan.takeoff);
  CHECK(json["area_m2"] == 1.55);
  const auto& seat = json["parts"][0];
  CHECK(seat["name"] == "seat board");
  CHECK(seat["material"] == "fibreboard");
  CHECK(seat["estimated"] == false);
  CHECK(seat["area_m2"] == 0.95);
  CHECK(seat["tape_m"] == 1.5);
  CHECK(seat["surfaces"].size() == 3);
  CHECK(seat["surfaces"][1]["side"] == "back");
  const auto& leg = json["parts"][1];
  CHECK(leg["estimated"] == true);
  CHECK(leg["tape_m"] == 0);
  CHECK(leg["surfaces"][0]["face"] == "inside");
  CHECK(leg["surfaces"][0]["grain"] == "fibreboard_edge");
}

TEST_CASE("the JSON of the areas has the parts of the JSON plan and the notes") {
  const auto json = nlohmann::json::parse(area_json(small_areas()));
  CHECK(json["tackfree_area"] == 1);
  CHECK(json["job"]["name"] == "Hall bench");
  CHECK(json["parts"].size() == 2);
  CHECK(json["parts"][0]["surfaces"][0]["area_m2"] == 0.5);
  CHECK(json["notes"][0]["about"] == "film");
}

TEST_CASE("no name, however hostile, makes the JSON of the areas unreadable") {
  SmallNames names;
  names.job = names.part = hostile_name();
  CHECK(nlohmann::json::accept(area_json(small_areas(names))));
}
