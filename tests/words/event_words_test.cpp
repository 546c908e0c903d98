#include "tackfree/words/event_words.hpp"

#include "tackfree/words/display_text.hpp"

#include <algorithm>
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

TEST_CASE("the label is deferred to in the events of coats and of closing up alone") {
  const Plan plan = judged_plan();
  const StepWords words(plan);
  const std::string deference = plan.job.data.texts.deference;
  for (const CalendarEvent& event : calendar_events(plan)) {
    const auto lines = event_words(plan, words, event).lines;
    CHECK((std::ranges::find(lines, deference) != lines.end()) ==
          (event.category == "coating" || event.category == "airing"));
  }
}

TEST_CASE("what cannot wait says so in its title") {
  Plan plan = small_plan();
  plan.job.coatings[0].wipe_off_within = sourced(minutes(30), Origin::label);
  const StepWords words(plan);
  const auto said = [&](CalendarEvent::What what, std::size_t index) {
    CalendarEvent event;
    event.what = what;
    event.index = index;
    event.time = {at("2027-04-10T15:20:00Z"), at("2027-04-10T15:30:00Z")};
    return event_words(plan, words, event);
  };
  CHECK(said(CalendarEvent::What::pot_end, 1).summary == "Pot life over: coat 1, seat");
  CHECK(said(CalendarEvent::What::pot_end, 1).lines.front().starts_with("It was mixed at 10:10"));
  // The legs are coated from 10:40 to 11:10 am.
  plan.list.operations[3].kind = OperationKind::wipe_off;
  plan.list.operations[3].coat = 1;
  plan.list.operations[3].batch = 1;
  plan.schedule.steps[3].operation = 3;
  CHECK(said(CalendarEvent::What::wipe_off, 3).summary == "Wipe off coat 1 now: legs");
  CHECK(said(CalendarEvent::What::wipe_off, 3).lines.front() == "All of it off by 11:40 am.");
}

}  // namespace tackfree
