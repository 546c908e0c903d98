#include "tackfree/export/drying_json.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("the factors of an explained wait multiply out in the JSON") {
  const Instant begin = parse_instant("2027-04-05T10:00Z").value();
  const DryingExplanation why{.stage = Stage::sand,
                              .label = {hours(6), Origin::label, {}},
                              .label_least = hours(4),
                              .temperature = {2.0, Origin::practice, {}},
                              .humidity = {1.25, Origin::assumed, {}},
                              .film = {1.5, Origin::assumed, {}},
                              .air_movement = {0.8, Origin::assumed, {}},
                              .held = {1.0, Origin::practice, {}},
                              .begins = begin,
                              .ends = begin + Minutes(18 * 60)};
  const auto json = explanation_json(why, Zone::utc());
  double product = json["label_h"]["value"];
  for (const char* factor : {"temperature", "humidity", "film", "air_movement", "held"})
    product *= json[factor]["value"].get<double>();
  CHECK(product == doctest::Approx(json["wait_h"].get<double>()));
  CHECK(json["label_least_h"] == 4);
  CHECK(json["temperature"]["origin"] == "practice");
  CHECK(json["ends_at"] == "2027-04-06T04:00:00Z");
}

TEST_CASE("an outlook names its gates, their source and when they open") {
  const Plan plan = small_plan();
  CoatOutlook outlook{.applied = plan.now,
                      .putting_on = Minutes(5),
                      .gates = {{Gate::dew, plan.now + Minutes(60)}},
                      .blush = BlushRisk::some};
  const auto json = nlohmann::json::parse(outlook_json(plan.job, outlook));
  CHECK(json["tackfree_drying"] == 1);
  CHECK(json["gates"][0]["gate"] == "dew");
  CHECK(json["gates"][0]["opens_at"] == iso_utc(plan.now + Minutes(60)));
  CHECK(json["gates"][0].contains("source"));
  CHECK(json["blush_risk"] == "some");
  CHECK(json["best_at"].is_null());
}
