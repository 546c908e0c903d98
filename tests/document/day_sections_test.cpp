#include "tackfree/document/day_sections.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::string days_of(const Plan& plan, DayDetail detail = DayDetail::plain, int columns = 80) {
  TextPage page(columns);
  write_days(page, plan, StepWords(plan), HowTo(plan), detail);
  return page.text();
}

}  // namespace

TEST_CASE("a session says its hours and how long the work is, set-up and clean-up with it") {
  CHECK(holds(days_of(small_plan()), "\nSat Apr 10, 9:00 to 11:30 am: 1 h 45 min of work\n"));
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

TEST_CASE("a split step has a line for each piece") {
  const std::string text = days_of(small_plan());
  CHECK(holds(text, "[ ]  5:00 pm  seat: sand bare wood, P120 (1 of 2)"));
  CHECK(holds(text, "[ ]  9:00 am  seat: sand bare wood, P120 (2 of 2)"));
}

TEST_CASE("a step too long for its line goes on below, uncut") {
  SmallNames names;
  names.batch = "shelf of the lower hall";
  const std::string text = days_of(small_plan(names), DayDetail::plain, 60);
  CHECK(holds(text, "[ ] 10:10 am  shelf of the lower hall: coat 1"));
  CHECK(holds(text, "\n                of 2, back, at 59 \u00b0F\n"));
}

TEST_CASE("days that rest on typical air say so") {
  CHECK(holds(days_of(small_plan()),
              "\nSun Apr 11, 9:00 to 9:10 am: 10 min of work; typical air, hours may move\n"));
}

TEST_CASE("milestones that are not reached say so") {
  const Plan plan = small_plan();
  TextPage page(80);
  write_milestones(page, plan, StepWords(plan));
  CHECK(holds(page.text(), "  seat        -       later         -         -           -\n"));
  CHECK(holds(page.text(), "  legs        -  Sun Apr 11         -         -  Thu Apr 29\n"));
}

// Seen failing: it stood at the coat, after set-up and the wipe with spirits.
TEST_CASE("what must be off stands by name at the set-up, before the tin is opened") {
  Plan plan = small_plan();
  plan.job.room.ignition_sources = {"water heater", "freezer"};
  CHECK_FALSE(holds(days_of(plan), "water heater"));
  for (std::size_t i = 0; i < plan.schedule.steps.size() && plan.flammable.empty(); ++i)
    if (plan.list.operations[plan.schedule.steps[i].operation].coating)
      plan.flammable = {{i, {plan.schedule.steps[i].begin(), plan.schedule.steps[i].end()}}};
  const std::string text = days_of(plan);
  const std::size_t off = text.find("! Before you open the tin, turn off the water heater and the");
  REQUIRE(off != std::string::npos);
  CHECK(off < text.find("Pour"));
  CHECK(off > text.rfind("set up", off));
  CHECK(text.find("water heater", off + 60) == std::string::npos);
}

TEST_CASE("a day gives the better airing where the job's own is too little") {
  Plan plan = judged_plan();
  plan.job.room.airing = plan.room->habit;
  CHECK(holds(days_of(plan),
              "\n  Open to outdoors 10:00 am to 4:10 pm. Your own habit (open to outdoors"));
}

TEST_CASE("a day says how far the door is open, by the clock") {
  Plan plan = small_plan();
  CHECK_FALSE(holds(days_of(plan), "Open to outdoors"));
  plan.job.room.airing = AiringHabit{Opening::open, Opening::ajar, hours(2)};
  CHECK(holds(days_of(plan),
              "\n  Open to outdoors 10:00 to 11:10 am, then ajar to outdoors until 1:10 pm.\n"));
}

TEST_CASE("the days tell the reason that binds, all of the plan every origin and number") {
  const Plan plan = small_plan();
  const std::string plain = days_of(plan), full = days_of(plan, DayDetail::full);
  CHECK(holds(
      plain, "\n              It is too cold to coat until 10:10 am (the limit is 50 \u00b0F).\n"));
  CHECK_FALSE(holds(plain, "[practice]"));
  CHECK_FALSE(holds(plain, "#2"));
  CHECK(holds(full, "[practice]"));
  CHECK(holds(full, " #2\n"));
}

TEST_CASE("with several people each one's lines stand under the name, once") {
  Plan plan = small_plan();
  plan.job.people.resize(2);
  plan.job.people[0].name = "Ada";
  plan.job.people[1].name = "Ben";
  plan.schedule.steps[1].by = {0};
  plan.schedule.steps[2].by = {1};
  const std::string text = days_of(plan);
  const std::size_t ada = text.find("\nAda:\n"), ben = text.find("\nBen:\n");
  CHECK(ada < ben);
  CHECK(ben != std::string::npos);
  CHECK(text.find("Ada", ada + 5) == std::string::npos);
}

TEST_CASE("due dates stand with how late they are and what holds them") {
  Plan plan = small_plan();
  plan.job.batches[1].rules.ready_by = at("2027-04-11T03:00:00Z");
  TextPage page(80);
  write_due_dates(page, plan, StepWords(plan));
  CHECK(holds(
      page.text(),
      "DUE DATES\n  - legs, due Sat Apr 10, 11:00 pm: ready Sun Apr 11, 11:00 pm, late by 24 h."));
}
