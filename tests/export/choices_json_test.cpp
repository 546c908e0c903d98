#include "tackfree/export/choices_json.hpp"

#include "two_choices.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("the JSON of the choices has dates, sessions, work and what is proved of each") {
  const auto document = nlohmann::json::parse(choices_json(two_choices()));
  CHECK(document["tackfree_choices"] == 1);
  REQUIRE(document["choices"].size() == 2);
  CHECK(document["choices"][0]["sessions"] == 4);
  CHECK(document["choices"][0]["ready_at"] == "2027-04-12T21:20:00Z");
  CHECK(document["choices"][0]["proof"]["fewest_sessions"] == false);
  CHECK(document["choices"][1]["work_min"] == 200);
  CHECK(document["choices"][1]["work_days"] == 2);
  CHECK(document["none_fewer_proved"] == true);
}
