#include "tackfree/export/fumes_json.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("the JSON has each limit, each airing and the proposed habit") {
  nlohmann::ordered_json document;
  put_fumes(document, judged_plan());
  const auto& fumes = document["fumes"];
  CHECK(fumes["stops"] == false);
  CHECK(fumes["word"] == "WARNING");
  CHECK(fumes["verdict"] == "too_little");
  CHECK(fumes["proposed"]["after"]["hours"] == 5);
  CHECK(fumes["limits"].size() == 4);
  CHECK(fumes["limits"][3]["of_limit"] == 1.3);
  CHECK(fumes["limits"][0]["least_flow_m3_per_h"] == 100);
  CHECK(fumes["airings"][0]["airing"][0]["state"] == "open");
  CHECK(fumes["airings"][0]["airing"][0]["end_at"] == "2027-04-10T18:10:00Z");
  CHECK(fumes["airings"][0]["steps"].size() == 2);
  CHECK(fumes["airings"][0]["under_tenth_at"].is_null());
}

TEST_CASE("a room that was not judged is null") {
  nlohmann::ordered_json document;
  put_fumes(document, small_plan());
  CHECK(document["fumes"].is_null());
}
