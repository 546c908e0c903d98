#include "tackfree/words/session_words.hpp"

#include "tackfree/words/display_text.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::string title_of(const Plan& plan, std::size_t session, std::size_t columns = 80) {
  return session_title(plan, StepWords(plan), work_sessions(plan.list, plan.schedule).at(session),
                       columns);
}

TEST_CASE("a title says the coats first, then the other work, each with its pieces") {
  const Plan plan = small_plan();
  CHECK(title_of(plan, 0) == "Sand: seat");
  CHECK(title_of(plan, 1) == "Coat 1: seat (back), legs; sand: seat");
  CHECK(title_of(plan, 2) == "Turn over: seat");
}

TEST_CASE("a title that is too long says what else there is without its pieces, then only that") {
  const Plan plan = small_plan();
  CHECK(title_of(plan, 1, 36) == "Coat 1: seat (back), legs; sand");
  CHECK(title_of(plan, 1, 30) == "Coat 1: seat (back), legs; an…");
  for (std::size_t columns = 10; columns < 60; ++columns)
    CHECK(display_width(title_of(plan, 1, columns)) <= columns);
}

TEST_CASE("with several people their names stand first") {
  Plan plan = small_plan();
  plan.job.people = {{.name = "Ana", .hours = {}}, {.name = "Ben", .hours = {}}};
  plan.schedule.steps[0].by = {0, 0};
  plan.schedule.steps[1].by = {1};
  CHECK(title_of(plan, 0) == "Ana: Sand: seat");
  CHECK(title_of(plan, 1) == "Ana, Ben: Coat 1: seat (back), legs; sand: seat");
}

TEST_CASE("a task says its piece, the grits of a sanding from the first to the last") {
  Plan plan = small_plan();
  plan.list.operations[4] = plan.list.operations[0];
  plan.list.operations[4].grit = Grit{180};
  plan.schedule.steps = {plan.schedule.steps[0], plan.schedule.steps[3]};
  plan.schedule.steps[0].pieces.pop_back();
  plan.schedule.steps[1].pieces = {{at("2027-04-09T21:15:00Z"), at("2027-04-09T21:30:00Z")}};
  const auto session = work_sessions(plan.list, plan.schedule).front();
  REQUIRE(session.tasks.size() == 1);
  CHECK(task_words(plan, StepWords(plan), session.tasks[0]) ==
        "seat: sand bare wood, P120 to P180");
}

TEST_CASE("set-up and clean-up say what with") {
  const Plan plan = small_plan();
  const auto tasks = work_sessions(plan.list, plan.schedule).at(1).tasks;
  REQUIRE(tasks.size() == 5);
  CHECK(task_words(plan, StepWords(plan), tasks[1]) == "set up: varnish, brush");
  CHECK(task_words(plan, StepWords(plan), tasks[4]) == "clean up: varnish, brush");
}

}  // namespace
}  // namespace tackfree
