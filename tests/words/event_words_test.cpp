#include "tackfree/words/event_words.hpp"

#include "tackfree/words/display_text.hpp"

#include <string>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("each event says on one line what it is of, however long the names are") {
  for (const SmallNames& names : {SmallNames{}, SmallNames{.batch = hostile_name()}}) {
    const Plan plan = small_plan(names);
    const StepWords words(plan);
    for (const CalendarEvent& event : calendar_events(plan)) {
      const std::string summary = event_words(plan, words, event).summary;
      CHECK_FALSE(summary.empty());
      CHECK(display_width(summary) <= longest_summary);
      CHECK_FALSE(holds(summary, "\n"));
    }
  }
}

TEST_CASE("what may hurt stands in the events of coats and airings alone") {
  const Plan plan = judged_plan();
  const StepWords words(plan);
  const std::string deference = plan.job.data.texts.deference;
  for (const CalendarEvent& event : calendar_events(plan)) {
    bool deferred = false;
    for (const std::string& line : event_words(plan, words, event).lines)
      deferred = deferred || line == deference;
    CHECK(deferred == (event.category == "coating" || event.category == "airing"));
  }
}

TEST_CASE("the pieces of a step are numbered") {
  const Plan plan = small_plan();
  const StepWords words(plan);
  const auto events = calendar_events(plan);
  CHECK(event_words(plan, words, events[0]).summary.ends_with("(1 of 2)"));
  CHECK(event_words(plan, words, events[1]).summary.ends_with("(2 of 2)"));
}

}  // namespace tackfree
