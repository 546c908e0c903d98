#include "tackfree/export/schedule_json.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("sanding has grits and coats have litres, never the other way round") {
  nlohmann::ordered_json document;
  put_schedule(document, small_plan());
  const auto& sand = document["steps"][0];
  CHECK(sand["grit_p"] == 120);
  CHECK(sand["sheets"] == 0.8);
  CHECK_FALSE(sand.contains("mixed_l"));
  const auto& coat = document["steps"][1];
  CHECK(coat["mixed_l"] == 0.11);
  CHECK(coat["coating"] == "varnish");
  CHECK_FALSE(coat.contains("grit_p"));
}

TEST_CASE("every reason of a step is kept, with its rule") {
  nlohmann::ordered_json document;
  put_schedule(document, small_plan());
  CHECK(document["steps"][1]["held"][0]["by"] == "air");
  CHECK(document["steps"][1]["held"][0]["gate"] == "too_cold");
  CHECK(document["steps"][1]["held"][0]["rule"] == "too cold to coat (under 50 \u00b0F)");
  CHECK(document["steps"][1]["held"][0]["origin"] == "practice");
  CHECK(document["steps"][1]["held"][0]["source"] == "");
  CHECK(document["steps"][3]["held"][1]["by"] == "calendar");
  CHECK(document["unplaced"][0]["gate"] == "too_cold");
  CHECK(document["milestones"][0]["reached_at"].is_null());
}

TEST_CASE("what would help stands with what to write, as it is written into a job") {
  Plan plan = small_plan();
  plan.remedies = {
      {.change = ConditionedAir{.warmer = fahrenheit_degrees(4), .heater = HeaterKind::sealed},
       .operation = 3,
       .begins = at("2027-04-10T14:00:00Z"),
       .ready_at = {}}};
  plan.schedule.unplaced[0].work_days = 9;
  plan.schedule.unplaced[0].closed = {{HeldBy::air, Gate::too_cold, 8}};
  nlohmann::ordered_json document;
  put_schedule(document, plan);
  const auto& remedy = document["remedies"][0];
  CHECK(remedy["step"] == "seat/varnish/coat-2/show/coat");
  CHECK(remedy["begins_at"] == "2027-04-10T14:00:00Z");
  CHECK(remedy["ready_at"].is_null());
  CHECK(remedy["write"]["air"]["conditioned"][0]["warmer_f"] == 4);
  CHECK(document["unplaced"][0]["work_days"] == 9);
  CHECK(document["unplaced"][0]["closed_days"][0]["gate"] == "too_cold");
  CHECK(document["unplaced"][0]["closed_days"][0]["days"] == 8);
}
