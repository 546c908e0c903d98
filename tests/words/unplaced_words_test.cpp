#include "tackfree/words/unplaced_words.hpp"

#include <set>
#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("each rule that keeps a step out has a sentence of its own, with a way out") {
  const Plan plan = small_plan();
  std::set<std::string> sentences;
  for (const HeldBy by :
       {HeldBy::previous_step, HeldBy::drying, HeldBy::air, HeldBy::quiet_hours, HeldBy::calendar,
        HeldBy::pin, HeldBy::no_coating_day, HeldBy::not_before, HeldBy::space, HeldBy::person}) {
    const std::string text = unplaced_words(
        {.operation = 3, .by = by, .gate = Gate::too_humid, .waits_for = 4, .conflict = {}}, plan);
    CHECK(text.size() > 30);
    sentences.insert(text);
  }
  CHECK(sentences.size() == 10);
}

TEST_CASE("work too long for any window is told in minutes, a coat with what is around it") {
  Plan plan = small_plan();
  plan.job.data.labour.set_up = sourced(minutes(10), Origin::practice);
  plan.job.coatings[0].clean_up = sourced(minutes(20), Origin::practice);
  const auto text = [&](std::size_t operation) {
    return unplaced_words({.operation = operation, .by = HeldBy::calendar, .conflict = {}}, plan);
  };
  CHECK(text(3).starts_with(
      "it takes 60 min in one go (30 min coating, 30 min set-up and clean-up) and"));
  CHECK(text(0).starts_with("it takes 30 min and the working hours within the plan"));
}

TEST_CASE("rules that cannot hold together are told with their days and hours") {
  Plan plan = small_plan({}, UnitSystem::us);
  BatchRules& rules = plan.job.batches[0].rules;
  rules.pins = {{"varnish", 2, std::nullopt, *parse_date("2027-04-11"), {8 * 60, 11 * 60 + 30}, 0}};
  rules.no_coating_on = {*parse_date("2027-04-20"), *parse_date("2027-04-21")};
  rules.not_before = at("2027-04-16T14:00:00Z");
  const Unplaced unplaced{
      .operation = 3,
      .conflict = {ConflictingRule::quiet_hours, ConflictingRule::no_coating_days,
                   ConflictingRule::space, ConflictingRule::not_before, ConflictingRule::pins,
                   ConflictingRule::air, ConflictingRule::working_hours},
      .longest_stretch = Minutes(240)};
  CHECK(conflict_words(unplaced, plan, Figures(plan.job)) ==
        std::vector<std::string>{
            "the quiet hours for power sanding", "no coating on Tue Apr 20, Wed Apr 21",
            "the space to dry", "not before Fri Apr 16, 10:00 am",
            "the coat set for Sun Apr 11, 8:00 am to 11:30 am", "the limits of air for \"varnish\"",
            "the working hours, in stretches of 240 min at most"});
  rules.not_before.reset();
  rules.pins.clear();
  const auto unnamed = conflict_words(
      {.operation = 0,
       .conflict = {ConflictingRule::not_before, ConflictingRule::pins, ConflictingRule::air}},
      plan, Figures(plan.job));
  CHECK(unnamed == std::vector<std::string>{"the times before which batches are not begun",
                                            "the coats set for a day",
                                            "the limits of air for coating"});
}

TEST_CASE("every rule that occurs is told with its days, and days with none of them too") {
  const Plan plan = small_plan();
  Unplaced unplaced{.operation = 3, .by = HeldBy::air, .gate = Gate::dew, .conflict = {}};
  unplaced.work_days = 16;
  unplaced.closed = {
      {HeldBy::air, Gate::dew, 12}, {HeldBy::air, Gate::too_cold, 2}, {HeldBy::calendar, {}, 1}};
  CHECK(
      unplaced_words(unplaced, plan) ==
      "too near the dew point until touch-dry on 12 of the 16 days you can work within the plan, "
      "too cold to coat on 2, too few hours in one go on 1, other steps or waits in the way on 1; "
      "heat or dry the room, or wait for another season");
  unplaced.closed = {{HeldBy::air, Gate::dew, 16}};
  CHECK(unplaced_words(unplaced, plan)
            .starts_with("too near the dew point until touch-dry on all 16 days you can work "
                         "within the plan;"));
}
