#include "tackfree/export/left_over_json.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("the JSON of what is left has each tin with its dates, and each kind of waste") {
  Plan plan = small_plan();
  CoatingLeft left{.coating = 0, .expected = litres(0.56), .nine_in_ten = litres(0.4)};
  left.tins = {{litres(0.31), parse_date("2027-04-08"), parse_date("2028-04-07"), false},
               {litres(0.25), {}, {}, false}};
  plan.left_over.coatings = {left};
  plan.left_over.thinners = {{"mineral spirits", litres(0.4), litres(0.3)}};
  plan.left_over.waste = {{{"wash", "Wash", "Let it settle.", Origin::published, "a county"}, {0}}};
  nlohmann::ordered_json document;
  put_left_over(document, plan);
  const auto& json = document["left_over"];
  CHECK(json["coatings"][0]["coating"] == "varnish");
  CHECK(json["coatings"][0]["expected_l"] == 0.56);
  CHECK(json["coatings"][0]["nine_in_ten_l"] == 0.4);
  CHECK(json["coatings"][0]["tins"][0]["keeps_until"] == "2028-04-07");
  CHECK(json["coatings"][0]["tins"][1]["opened_on"].is_null());
  CHECK(json["thinners"][0]["used_l"] == 0.3);
  CHECK(json["waste"][0]["do"] == "Let it settle.");
  CHECK(json["waste"][0]["coatings"][0] == "varnish");
  CHECK(json["waste"][0]["origin"] == "published");
  CHECK(json["waste"][0]["source"] == "a county");
}
