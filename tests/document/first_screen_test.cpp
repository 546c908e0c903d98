#include "tackfree/document/first_screen.hpp"

#include "tackfree/text/text_page.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <sstream>
#include <string>

#include "judged_plan.hpp"
#include "shipped_data.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::string first_screen(const Plan& plan, int columns = 80) {
  TextPage page(columns);
  write_first_screen(page, plan, StepWords(plan));
  return page.text();
}

std::string in_one_line(const std::string& text) {
  std::istringstream words(text);
  std::string line;
  for (std::string word; words >> word;) line += (line.empty() ? "" : " ") + word;
  return line;
}

/// Every caution that is shipped, as a warning, with long names, late dates and much to look at.
Plan crowded_plan() {
  Plan plan = judged_plan();
  const std::string long_name(200, 'w');
  plan.cautions.clear();
  for (const Caution& text : testing::shipped_data().texts.cautions) {
    plan.cautions.push_back({.text = text});
    plan.cautions.back().text.word = "WARNING";
  }
  plan.heater_clash = HeaterClash{{}, {{plan.now, plan.now + Minutes(60)}}};
  plan.job.room.ignition_sources = {long_name, long_name, long_name, long_name, long_name};
  for (RaisedCaution& caution : plan.cautions)
    caution.names_sources = caution.text.key == "ignition";
  for (int i = 0; i < 40; ++i) {
    plan.notes.emplace_back(FilmNote{.batch = 0, .coats = i, .fault = FilmNote::Fault::thin});
    plan.shopping.coatings.push_back(plan.shopping.coatings.front());
  }
  plan.now = at("2027-04-10T13:20:00Z");
  plan.schedule.unplaced.clear();
  plan.schedule.ready_at = at("2027-05-12T03:00:00Z");
  plan.schedule.proof = Proof{plan.now, false, false};
  plan.aired.emplace().every_chance = true;
  for (Batch& batch : plan.job.batches) batch.rules.ready_by = at("2027-06-01T03:00:00Z");
  plan.job.last_plan.emplace();
  for (int day = 0; day < 12; ++day)
    for (int i = 0; i < 12; ++i) {
      Operation op = small_operation(OperationKind::sand_between, "x", i % 2 == 0 ? 0 : 1, i);
      op.grit = Grit{100 + i};
      const Instant begin = at("2027-04-12T13:00:00Z") + Minutes(day * 24 * 60 + 30 * i);
      plan.list.operations.push_back(op);
      plan.schedule.steps.push_back(
          {.operation = plan.list.operations.size() - 1, .pieces = {{begin, begin + Minutes(30)}}});
    }
  return plan;
}

}  // namespace

TEST_CASE("however much there is to say, the first screen keeps to its lines") {
  const std::string text = first_screen(crowded_plan());
  CHECK(static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) <= most_first_lines);
  CHECK(holds(text, "more things to look at."));
}

TEST_CASE("however much there is to say, each warning has its line") {
  const Plan plan = crowded_plan();
  const std::string text = in_one_line(first_screen(plan));
  for (const RaisedCaution& caution : plan.cautions)
    if (caution.text.key != "ignition")
      CHECK_MESSAGE(holds(text, caution.text.in_short), caution.text.key);
  CHECK(holds(text, "WARNING Vapour can flash: turn off the www"));
  CHECK(holds(text, "WARNING If your heater has a flame or glows"));
}

TEST_CASE("dangers stand before all else, then what needs a look, then what to do") {
  Plan plan = small_plan();
  plan.cautions[0].text.word = "DANGER";
  plan.now = at("2027-04-10T13:20:00Z");
  const std::string text = first_screen(plan);
  CHECK(text.starts_with("DANGER  Rags can catch fire: spread them flat outside.\n! No time for"));
  const std::size_t now =
      text.find("\nNow   Until 11:30 am (1 h 45 min of work). Sand bare wood, P120");
  const std::size_t ready = text.find("\nReady No date yet");
  const std::size_t buy = text.find("\nBuy   1 x 1 qt varnish; 1 x 1 pt mineral spirits\n");
  const std::size_t next = text.find("\nTHE NEXT SESSIONS\nSun Apr 11, 9:00 to 9:10 am");
  CHECK(now < ready);
  CHECK(ready < buy);
  CHECK(buy < next);
  CHECK(next != std::string::npos);
}

TEST_CASE("work of another day is not for now") {
  Plan plan = small_plan();
  plan.now = at("2027-04-10T21:00:00Z");
  CHECK(
      holds(first_screen(plan), "Now   Nothing until tomorrow, 9:00 am. Then: Turn over: seat.\n"));
  plan.now = at("2027-05-01T21:00:00Z");
  plan.schedule.unplaced.clear();
  CHECK(holds(first_screen(plan), "Now   Nothing is left to do.\n"));
}

TEST_CASE("the next sessions are three, with their warnings, and the others are counted") {
  Plan plan = crowded_plan();
  plan.cautions.clear();
  plan.notes.clear();
  plan.shopping.coatings.resize(1);
  const std::string text = first_screen(plan);
  CHECK(holds(text, "\nMon Apr 12, 9:00 am to 3:00 pm: 6 h of work\n"));
  CHECK_FALSE(holds(text, "Wed Apr 14"));
  CHECK(holds(text, "Then 10 more sessions. Your own work: "));
}

TEST_CASE("dates that are kept are named in one line") {
  Plan plan = small_plan();
  plan.job.batches[1].rules.ready_by = at("2027-04-15T03:00:00Z");
  CHECK(holds(first_screen(plan), "Due   In time: legs.\n"));
}
