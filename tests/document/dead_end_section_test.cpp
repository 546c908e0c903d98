#include "tackfree/document/dead_end_section.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::string too_cold =
    "seat: coat 2 of 2, show side: too cold to coat whenever you can work; heat";

std::string unplaced_text(const Plan& plan) {
  TextPage page(80);
  write_unplaced(page, plan, StepWords(plan));
  return page.text();
}

std::string dead_end_text(const Plan& plan) {
  TextPage page(90);
  write_dead_end(page, plan, plan.remedies, WorkWords(plan.job));
  return page.text();
}

Plan remedied_plan() {
  Plan plan = small_plan();
  plan.schedule.unplaced.push_back(
      {.operation = 4, .by = HeldBy::previous_step, .gate = {}, .waits_for = 3, .conflict = {}});
  plan.remedies = {
      {.change = ConditionedAir{.warmer = fahrenheit_degrees(4), .heater = HeaterKind::sealed},
       .operation = 3,
       .begins = at("2027-04-10T14:00:00Z"),
       .ready_at = {}}};
  return plan;
}

}  // namespace

TEST_CASE("steps that wait for one without a time are listed after it, not explained each") {
  Plan plan = remedied_plan();
  plan.remedies.clear();
  CHECK(holds(unplaced_text(plan), "NO TIME FOUND\n  ! " + too_cold +
                                       "\n"
                                       "    or dry the room, or wait for another season\n"
                                       "  ! Waiting for that: seat: turn over.\n"));
  CHECK_FALSE(holds(unplaced_text(plan), "What would help"));
  plan.schedule.unplaced.clear();
  CHECK(unplaced_text(plan).empty());
}

TEST_CASE("what would help stands below the step that it would help, with its warning") {
  const std::string text = unplaced_text(remedied_plan());
  CHECK(holds(text, "What would help, and what to write into the job:"));
  CHECK(holds(text, "With the room 4 \u00b0F warmer throughout: seat: coat 2"));
  CHECK(holds(text, "\"warmer_f\": 4"));
  CHECK(holds(text, "Warm the room with nothing that has a flame or glows"));
}

TEST_CASE("an answer that is no plan tells the same shortly: one step, what helps, no keys") {
  Plan plan = remedied_plan();
  const std::string text = dead_end_text(plan);
  CHECK(holds(text, "No time found for seat: coat 2 of 2, show side: too cold to coat"));
  CHECK(holds(text, "What would help (`tackfree plan` has what to write into the job):"));
  CHECK(holds(text, "With the room 4 \u00b0F warmer throughout: seat: coat 2"));
  CHECK(holds(text, "Warm the room with nothing that has a flame or glows"));
  CHECK_FALSE(holds(text, "\"warmer_f\": 4"));
  CHECK_FALSE(holds(text, "Waiting for that"));
  plan.schedule.unplaced.clear();
  CHECK(dead_end_text(plan).empty());
}
