#include "tackfree/export/json_values.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("a time is written in UTC and in local time, a missing one as null") {
  nlohmann::ordered_json object;
  const Zone zone = *Zone::named("Europe/Berlin");
  put_instant(object, "begin", at("2027-03-28T01:00:00Z"), zone);
  put_instant(object, "end", std::nullopt, zone);
  CHECK(object["begin_at"] == "2027-03-28T01:00:00Z");
  CHECK(object["begin_local"] == "2027-03-28T03:00+02:00");
  CHECK(object["end_at"].is_null());
  CHECK(object["end_local"].is_null());
}
