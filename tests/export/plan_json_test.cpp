#include "tackfree/export/plan_json.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

namespace {

nlohmann::json parsed(const Plan& plan) { return nlohmann::json::parse(json_report(plan)); }

}  // namespace

TEST_CASE("the JSON plan reads back with the numbers that the plan holds") {
  const Plan plan = small_plan();
  const auto json = parsed(plan);
  CHECK(json["tackfree_plan"] == 1);
  CHECK(json["area_m2"] == 1.55);
  CHECK(json["coats"][0]["mixed_l"] == 0.05);
  CHECK(json["films"][0]["counted_dry_um"] == 49.2);
  CHECK(json["shopping"]["coatings"][0]["nine_in_ten_l"] == 0.24);
  CHECK(json["shopping"]["coatings"][0]["bought_l"] == 0.9464);
  double sum = 0;
  for (const auto& part : json["parts"]) sum += part["area_m2"].get<double>();
  CHECK(sum == doctest::Approx(json["area_m2"].get<double>()));
}

TEST_CASE("every figure of a coating carries its origin and source") {
  const auto json = parsed(small_plan());
  const auto& coating = json["coatings"][0];
  CHECK(coating["film"]["solids_pct"]["value"] == 45);
  CHECK(coating["film"]["solids_pct"]["origin"] == "practice");
  CHECK(coating["film"]["solids_pct"]["source"] == "typical of labels");
  CHECK(coating["limits"]["dew_point_margin_k"]["origin"] == "published");
  CHECK(coating["drying"]["full_cure_after_h"]["value"] == 336);
}

TEST_CASE("times are in UTC and in local time with the offset") {
  const auto json = parsed(small_plan());
  CHECK(json["now_at"] == "2027-04-09T21:00:00Z");
  CHECK(json["now_local"] == "2027-04-09T17:00-04:00");
  CHECK(json["ready_at"].is_null());
  CHECK(json["steps"][0]["pieces"].size() == 2);
  CHECK(json["steps"][0]["end_at"] == "2027-04-10T13:15:00Z");
  CHECK(json["steps"][1]["reaches"]["handle_at"] == "2027-04-11T03:40:00Z");
}

TEST_CASE("steps refer to each other by key") {
  const auto json = parsed(small_plan());
  CHECK(json["steps"][3]["held"][0]["step"] == json["steps"][1]["key"]);
  CHECK(json["sessions"][0]["steps"][1] == json["steps"][2]["key"]);
  CHECK(json["unplaced"][0]["key"] == "seat/varnish/coat-2/show/coat");
}

TEST_CASE("names that are no UTF-8 do not stop the JSON plan and other names come back whole") {
  const std::string name = "a\"\\\n\x1b \u6728";
  CHECK(parsed(small_plan({.job = name}))["job"]["name"] == name);
  CHECK(parsed(small_plan({.job = "bad\xff"}))["job"]["name"] == "bad\uFFFD");
  const std::string hostile = hostile_name();
  CHECK_NOTHROW(parsed(small_plan({hostile, hostile, hostile, hostile})));
}

TEST_CASE("the JSON plan is the same on a second run, indented by two, with a final newline") {
  const std::string text = json_report(small_plan());
  CHECK(text == json_report(small_plan()));
  CHECK(text.starts_with("{\n  \"tackfree_plan\": 1,\n"));
  CHECK(text.ends_with("}\n"));
}
