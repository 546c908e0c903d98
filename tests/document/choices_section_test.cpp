#include "tackfree/document/choices_section.hpp"

#include "tackfree/text/screens.hpp"
#include "tackfree/words/display_text.hpp"

#include <sstream>
#include <string>

#include "two_choices.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

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

TEST_CASE("where a step has no time, the answer has what would help it") {
  Choices choices = two_choices();
  choices.ways.resize(1);
  choices.ways.front().schedule.ready_at.reset();
  choices.remedies = {{.change = AddedHours{parse_date("2027-04-09").value(), {{1260, 1320}}},
                       .operation = 3,
                       .begins = at("2027-04-10T01:00:00Z"),
                       .ready_at = {}}};
  const std::string text = choices_text(choices);
  CHECK(holds(text, "No time found for seat: coat 2 of 2, show side: too cold to coat"));
  CHECK(holds(text, "With 60 min more work on Fri Apr 9, until 10:00 pm"));
}
