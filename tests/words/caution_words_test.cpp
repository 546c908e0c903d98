#include "tackfree/words/caution_words.hpp"

#include <regex>

#include "shipped_data.hpp"
#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Caution text_of(const RaisedCaution& caution, UnitSystem units = UnitSystem::metric,
                std::optional<RoomJudgement> room = {}) {
  Plan plan = small_plan({}, units);
  plan.cautions = {caution};
  plan.cautions[0].text = {.key = "k", .word = "WARNING", .hazard = "Hazard.", .avoid = "Avoid."};
  plan.job.room.ignition_sources = {"water heater", "freezer"};
  plan.room = std::move(room);
  return caution_texts(plan).at(0);
}

UndatedVapour undated(double share) { return {assumed_explosive_limit * share, share}; }

}  // namespace

TEST_CASE("a caution without facts of the plan is the text of the data") {
  const Caution text = text_of({});
  CHECK(text.hazard == "Hazard.");
  CHECK(text.avoid == "Avoid.");
}

TEST_CASE("solvent is told by weight in the units of the job") {
  CHECK(
      text_of({.in_a_day = grams(153.4)}).hazard ==
      "Hazard. Up to 153 g evaporate in the heaviest 24 hours, from all coats and the cleaning of "
      "tools together.");
  CHECK(text_of({.in_a_day = grams(153.4)}, UnitSystem::us).hazard ==
        "Hazard. Up to 5.4 oz by weight evaporate in the heaviest 24 hours, from all coats and the "
        "cleaning of "
        "tools together.");
}

TEST_CASE("what has no date is set against the explosive limit, with what it asks for") {
  const Caution mild = text_of({.undated = undated(0.05)});
  CHECK(mild.hazard ==
        "Hazard. What has no date, all of it in the still, closed room, would be 2 g/m\u00b3, 5 % "
        "of the lower explosive limit (40 g/m\u00b3 assumed).");
  CHECK(mild.avoid == "Avoid.");
  CHECK(text_of({.undated = undated(0.15)}).avoid.starts_with("The vapour can burn: more air"));
  const Caution grave = text_of({.undated = undated(0.3)}, UnitSystem::us);
  CHECK(grave.avoid.starts_with("The vapour can explode: do not put this much on in this room."));
  CHECK(holds(grave.hazard, "12 oz/1000 cu ft, 30 %"));
}

TEST_CASE("a room of unknown size is asked for") {
  CHECK(text_of({.volume_unknown = true}).avoid ==
        "Avoid. Give the room's volume in the job and the vapour is estimated.");
}

TEST_CASE("the judgement of the room gives figures first and the remedy before the text") {
  RoomJudgement room;
  room.limits[0].share = 1.2;
  room.limits[1].share = 3;
  room.limits[0].least_flow = cubic_metres_per_hour(500);
  const Caution text = text_of({.of_room = true}, UnitSystem::metric, room);
  CHECK(holds(text.hazard, "30 % of the lower explosive limit"));
  CHECK(text.avoid.starts_with("The vapour can explode"));
  CHECK(holds(text.avoid, "At least 500 m\u00b3/h of outdoor air"));
  CHECK(text.avoid.ends_with("Avoid."));
}

TEST_CASE("what can light vapour or mist is named") {
  CHECK(text_of({.names_sources = true}).avoid == "Avoid. Here: water heater, freezer.");
  CHECK(text_of({.mist = SprayedMist{.beside_source = true}}).avoid ==
        "Do not spray this where these are: water heater, freezer. The mist can explode. "
        "Avoid.");
  CHECK(text_of({.mist = SprayedMist{.room_closed = true}}).avoid ==
        "Do not spray this in a closed room: the mist can explode. Avoid.");
}

TEST_CASE("sprayed isocyanates are no work for a home") {
  CHECK(text_of({.sprayed_isocyanates = true}).avoid.starts_with("Do not spray this at home"));
}

// Seen failing: one plan asked for supplied air, for a particle filter and for a cartridge.
TEST_CASE("the shipped texts name one respirator for a job, the strictest") {
  Plan plan = small_plan();
  plan.job.data = testing::shipped_data();
  const std::regex mask("respirator|cartridge|(filter|cartridge) mask");
  for (const Coating& coating : testing::shipped_data().classes)
    for (std::size_t method = 0; method < plan.job.data.methods.size(); ++method) {
      CAPTURE(coating.class_key);
      plan.job.coatings = {coating};
      for (Operation& op : plan.list.operations)
        if (op.method) op.method = method;
      plan.cautions = cautions(plan.job, plan.list, plan.volumes, {}, plan.schedule, {});
      int named = 0;
      for (const Caution& text : caution_texts(plan))
        if (text.key != "wood_dust" && std::regex_search(text.avoid, mask)) {
          ++named;
          if (sprays_isocyanates(coating, plan.job.data.methods[method]))
            CHECK(holds(text.avoid, "Wear a supplied-air respirator that fits"));
        }
      CHECK(named <= 1);
      CHECK((named == 1) == respirator(plan.job, plan.list, plan.volumes).has_value());
    }
}

// Seen failing: a finish that flashes at 25 C was coated at 30 C, and nothing said so.
TEST_CASE("a coat in air above its flash point is told with both temperatures") {
  Plan plan = small_plan({}, UnitSystem::metric);
  plan.cautions = {{.text = {.key = "ignition", .word = "WARNING", .avoid = "Off."}}};
  plan.job.coatings[0].flash_point = sourced(celsius(16), Origin::label);
  CHECK(caution_texts(plan).at(0).avoid == "Off.");
  plan.job.coatings[0].flash_point = sourced(celsius(13), Origin::label);
  CHECK(caution_texts(plan).at(0).avoid ==
        "Off. You coat with varnish at 15 \u00b0C, at or above its flash point of 13 \u00b0C: a "
        "spark "
        "lights its vapour.");
}

TEST_CASE("the data sheet's own signal word is told apart from the plan's") {
  CHECK(text_of({.data_sheet_word = DataSheetWord::danger}).avoid.ends_with("it is Danger."));
  CHECK(holds(text_of({.data_sheet_word = DataSheetWord::warning}).avoid,
              "Warning for this flash point, and Danger where a hardener"));
}

TEST_CASE("no text that is woven in calls anything safe") {
  for (const double share : {0.01, 0.15, 0.4}) {
    const RaisedCaution all{.in_a_day = grams(90),
                            .undated = undated(share),
                            .sprayed_isocyanates = true,
                            .mist = SprayedMist{},
                            .data_sheet_word = DataSheetWord::danger};
    const Caution text = text_of(all);
    CHECK_FALSE(std::regex_search(text.hazard + text.avoid, std::regex("\\b[Ss]afe(ly)?\\b")));
  }
}
