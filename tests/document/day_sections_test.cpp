#include "tackfree/document/day_sections.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::string days_of(const Plan& plan) {
  TextPage page(80);
  write_days(page, plan, StepWords(plan), HowTo(plan));
  return page.text();
}

std::string opening_of(const Plan& plan) {
  TextPage page(80);
  write_title(page, plan, Figures(plan.job));
  write_first(page, plan, StepWords(plan));
  return page.text();
}

}  // namespace

TEST_CASE("a day says how long the work is, set-up and clean-up with it") {
  CHECK(holds(days_of(small_plan()), "\nSat Apr 10: 1 h 45 min of work\n"));
}

TEST_CASE("the lines of a day stand in the order of the clock") {
  const std::string text = days_of(small_plan());
  const std::size_t set_up = text.find("[ ] 10:00 am  set up: varnish, brush");
  const std::size_t coat = text.find("[ ] 10:10 am  seat: coat 1 of 2, back");
  const std::size_t clean_up = text.find("[ ] 11:10 am  clean up: varnish, brush");
  CHECK(set_up < coat);
  CHECK(coat < clean_up);
  CHECK(clean_up != std::string::npos);
}

TEST_CASE("what comes next begins with its set-up") {
  Plan plan = small_plan();
  plan.now = at("2027-04-10T13:20:00Z");
  CHECK(holds(opening_of(plan), "Next  today, 10:00 am: set up, then seat: coat 1 of 2, back ("));
}

TEST_CASE("a split step has a line for each piece") {
  const std::string text = days_of(small_plan());
  CHECK(holds(text, "[ ]  5:00 pm  seat: sand bare wood, P120 (1 of 2)"));
  CHECK(holds(text, "[ ]  9:00 am  seat: sand bare wood, P120 (2 of 2)"));
}

TEST_CASE("a plan that is not proved the soonest says how late it may be at most") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.schedule.ready_at = at("2027-04-12T03:00:00Z");
  plan.schedule.proof = Proof{at("2027-04-11T21:00:00Z"), false, false};
  CHECK(holds(opening_of(plan),
              "Proved no schedule within these rules is ready before Sun Apr 11, 5:00 pm; this\n"
              "       one at most 6 h later.\n"));
}

TEST_CASE("a step too long for its line goes on below, uncut") {
  SmallNames names;
  names.batch = "shelf of the lower hall";
  Plan plan = small_plan(names);
  plan.job.people = {{.name = "the elder one"}, {.name = "the younger one"}};
  for (DatedStep& step : plan.schedule.steps) step.by.assign(step.pieces.size(), 1);
  const std::string text = days_of(plan);
  CHECK(holds(text, "[ ] 10:10 am  the younger one: shelf of the lower hall: coat 1 of "));
  CHECK(holds(text, "\n                2, back, at 59 \u00b0F\n"));
}

TEST_CASE("days that rest on typical air say so") {
  CHECK(
      holds(days_of(small_plan()), "\nSun Apr 11: 10 min of work; typical air, hours may move\n"));
}

TEST_CASE("a plan whose steps all have times says when it is ready and cured") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.schedule.ready_at = at("2027-04-12T03:00:00Z");
  const std::string text = opening_of(plan);
  CHECK(holds(text, "Ready Sun Apr 11, 11:00 pm, for light use; fully cured Thu Apr 29\n"));
  CHECK(holds(text, "Buy   1 x 1 qt varnish; 1 x 1 pt mineral spirits\n"));
}

TEST_CASE(
    "hardware that goes on after light use has its date beside it, sooner hardware has none") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.schedule.ready_at = at("2027-04-12T03:00:00Z");
  DatedStep hardware;
  hardware.operation = plan.list.operations.size();
  plan.list.operations.push_back({.kind = OperationKind::fit_hardware});
  hardware.pieces = {{at("2027-04-14T14:00:00Z"), at("2027-04-14T14:45:00Z")}};
  plan.schedule.steps.push_back(hardware);
  CHECK(holds(opening_of(plan), "for light use; hardware on Wed Apr 14, 10:45 am;"));
  plan.schedule.steps.back().pieces = {{at("2027-04-11T14:00:00Z"), at("2027-04-11T14:45:00Z")}};
  CHECK(holds(opening_of(plan), "for light use; fully cured Thu Apr 29\n"));
}

TEST_CASE("one batch that is not cured within the plan keeps the whole from being so") {
  Plan plan = small_plan();
  plan.schedule.ready_at = at("2027-04-12T03:07:00Z");
  plan.schedule.outcomes.push_back({0, Stage::full_cure, std::nullopt});
  CHECK(holds(opening_of(plan),
              "Ready Mon Apr 12, midnight, for light use; fully cured after Fri Jun 4\n"));
}

TEST_CASE("the next step is the first that is not over, tomorrow's by that word") {
  Plan plan = small_plan();
  plan.now = at("2027-04-10T21:00:00Z");
  CHECK(holds(opening_of(plan), "Next  tomorrow, 9:00 am: seat: turn over (10 min)\n"));
  plan.now = at("2027-05-01T21:00:00Z");
  CHECK(holds(opening_of(plan), "Next  nothing is left to do"));
}

TEST_CASE("milestones that are not reached say so") {
  const Plan plan = small_plan();
  TextPage page(80);
  write_milestones(page, plan, StepWords(plan));
  CHECK(holds(page.text(), "  seat        -       later         -         -           -\n"));
  CHECK(holds(page.text(), "  legs        -  Sun Apr 11         -         -  Thu Apr 29\n"));
}

TEST_CASE("what must be off stands by name at the coat before which the tin is opened") {
  Plan plan = small_plan();
  plan.job.room.ignition_sources = {"water heater", "freezer"};
  CHECK_FALSE(holds(days_of(plan), "water heater"));
  for (std::size_t i = 0; i < plan.schedule.steps.size() && plan.flammable.empty(); ++i)
    if (plan.list.operations[plan.schedule.steps[i].operation].coating)
      plan.flammable = {{i, {plan.schedule.steps[i].begin(), plan.schedule.steps[i].end()}}};
  const std::string text = days_of(plan);
  const std::size_t off = text.find("off water heater, freezer: turn off before you open the");
  REQUIRE(off != std::string::npos);
  CHECK(off < text.find("pour"));
  CHECK(text.find("water heater", off + 10) == std::string::npos);
}

TEST_CASE("a day gives the better airing where the job's own is too little") {
  Plan plan = judged_plan();
  plan.job.room.airing = plan.room->habit;
  CHECK(holds(days_of(plan), "\nAiring door open 10:00 am to 4:10 pm. Your own habit (door open"));
}

TEST_CASE("a day says how far the door is open, by the clock") {
  Plan plan = small_plan();
  CHECK_FALSE(holds(days_of(plan), "Airing"));
  plan.job.room.airing = AiringHabit{Opening::open, Opening::ajar, hours(2)};
  CHECK(
      holds(days_of(plan), "\nAiring door open 10:00 to 11:10 am, then door ajar until 1:10 pm\n"));
}

TEST_CASE("a job that was ready in time says since when, and proves nothing of it") {
  Plan plan = small_plan();
  plan.schedule.unplaced.clear();
  plan.schedule.ready_at = plan.now - Minutes(3 * 24 * 60);
  plan.schedule.proof = Proof{plan.now, true, true};
  const std::string text = opening_of(plan);
  CHECK(holds(text, "Ready since "));
  CHECK_FALSE(holds(text, "Proved"));
}
