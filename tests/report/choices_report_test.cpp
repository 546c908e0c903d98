#include "tackfree/report/choices_report.hpp"

#include "tackfree/report/display_text.hpp"

#include <sstream>
#include <string>

#include "report/small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

namespace {

/// Two choices written down by hand: four sessions by the 12th, two by the 16th.
Choices two_choices() {
  Choices choices;
  for (const bool few : {false, true}) {
    Plan plan = small_plan();
    plan.schedule.sessions.assign(few ? 2 : 4, Session{});
    plan.schedule.ready_at = at(few ? "2027-04-16T21:00Z" : "2027-04-12T21:20Z");
    plan.schedule.proof = Proof{*plan.schedule.ready_at, true, few};
    plan.work.in_all = Minutes(few ? 200 : 260);
    plan.work.days.resize(few ? 2 : 4);
    choices.ways.push_back(std::move(plan));
  }
  choices.none_fewer = true;
  return choices;
}

}  // namespace

TEST_CASE("the table has a line for each choice, and below it what fewer sessions cost") {
  Choices choices = two_choices();
  const std::string text = choices_text(choices);
  CHECK(holds(text, "3 h 20 min"));
  CHECK(holds(text, "2 sessions instead of 4: 2 fewer, ready 4 days later."));
  CHECK(holds(text, "Fewer than 2 sessions are not possible within these rules: proved."));
  CHECK(holds(text, "the date"));
  CHECK(holds(text, "its plan is the first line"));
  for (const int columns : {40, 80, 200}) {
    std::istringstream page(choices_text(choices, columns));
    for (std::string line; std::getline(page, line);)
      CHECK(display_width(line) <= static_cast<std::size_t>(columns));
  }
  CHECK(holds(choices_text(choices, 40), "Apr"));
  CHECK_FALSE(holds(choices_text(choices, 40), "3 h 20 min"));
  choices.none_fewer = false;
  CHECK(holds(choices_text(choices), "were not found; that is no proof"));
  choices.ways.front().schedule.ready_at.reset();
  CHECK(holds(choices_text(choices), "nothing to choose from"));
}

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
