#include "tackfree/document/fumes_section.hpp"

#include "tackfree/text/text_page.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <regex>

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// The section with its line breaks taken out.
std::string section(const Plan& plan) {
  TextPage page(200);
  write_stop(page, plan);
  write_fumes(page, plan, Figures(plan.job));
  return std::regex_replace(page.text(), std::regex("\\s+"), " ");
}

}  // namespace

TEST_CASE(
    "the section has the habit, the airing hours and the habit that would do, ready to copy") {
  const std::string text = section(judged_plan());
  CHECK(holds(text, "Airing as you gave it: open to outdoors while coating, then open for 3 h"));
  CHECK(holds(text, "0.7 oz by weight of solvent; open to outdoors "));
  CHECK(holds(text, "drop below the 8-hour limits by "));
  CHECK(holds(
      text, R"("airing": { "while_coating": "open", "after": { "state": "open", "hours": 5 } })"));
  CHECK(holds(text, "--airing proposed"));
  CHECK_FALSE(holds(text, "DANGER"));
}

TEST_CASE("a plan that must not go on like this says so first, with the reason and the flow") {
  Plan plan = judged_plan();
  plan.room->limits[0].share = 1.6;
  const std::string text = section(plan);
  CHECK(text.starts_with("DANGER Stop: by this estimate the vapour reaches 40 % of what explodes"));
  CHECK(holds(text, "at least 59 cfm of outdoor air"));
}

// Seen failing: "below the 8-hour limits from 21:46; rises above them again once the airing ends",
// where the rise came first.
TEST_CASE("a rise after the airing is told before the hour from which the level is below again") {
  Plan plan = judged_plan();
  plan.room->stretches[0].rises_again = true;
  plan.room->stretches[0].eight_hours = 0.9;
  const std::string text = section(plan);
  CHECK(
      holds(text,
            "an 8-hour mean of at most 0.9 times the limits. Once the airing ends the level rises "
            "above the 8-hour limits again. It is estimated to drop below the 8-hour limits by "
            "1:00 pm"));
  CHECK(holds(text, "The level is that of a moment"));
  CHECK(holds(text, "with an 8-hour mean of at most 0.9 times the limits. Plan with it"));
}

TEST_CASE("without a judgement the section says what is missing") {
  Plan plan = small_plan();
  plan.job.room.volume.reset();
  CHECK(holds(section(plan), "The room's volume is not known"));
}

TEST_CASE("nothing in the section calls anything safe or gives leave") {
  for (const HabitVerdict verdict : {HabitVerdict::enough, HabitVerdict::too_little}) {
    Plan plan = judged_plan();
    plan.room->verdict = verdict;
    CHECK_FALSE(std::regex_search(section(plan), std::regex("\\b[Ss]afe(ly)?\\b")));
  }
}

// Seen failing: a plan with either said "below the limits" as if all were counted.
TEST_CASE("formaldehyde that no sum holds is named in every sentence on the limits") {
  Plan plan = judged_plan();
  CHECK_FALSE(holds(section(plan), "not counted"));
  plan.room->uncounted = {Uncounted::formaldehyde};
  plan.room->stretches[0].under_tenth_at = at("2027-04-10T20:00:00Z");
  const std::string text = section(plan);
  CHECK(std::regex_search(
      text,
      std::regex("below\\s+the\\s+8-hour\\s+limits\\s+\\(formaldehyde\\s+not\\s+counted\\)")));
  CHECK(holds(text, "No sum here holds formaldehyde"));
  CHECK(
      holds(text, "keeps the room under these limits by this estimate (formaldehyde not counted)"));
  plan.room->verdict = HabitVerdict::enough;
  CHECK(holds(section(plan), "under these limits by this estimate (formaldehyde not counted)."));
}

TEST_CASE("each limit of exposure says whose it is") {
  Plan plan = judged_plan();
  plan.job.data.solvents[0].limits_by = "NIOSH";
  plan.job.data.solvents[0].limit_8h.value = milligrams_per_cubic_metre(350);
  CHECK(holds(section(plan), "mineral spirits 350 mg/m\u00b3 (NIOSH)"));
}

TEST_CASE("cautions that come first stand above everything, the vapour's own once") {
  Plan plan = judged_plan();
  plan.cautions = {
      {.text = {.key = "isocyanates",
                .word = "WARNING",
                .hazard = "Isocyanates in the hardener.",
                .consequence = "Asthma.",
                .avoid = "No skin contact. More of it.",
                .comes_first = true}},
      {.text = {.key = "waste", .word = "NOTICE", .hazard = "Waste.", .avoid = "Dry it."}}};
  const std::string text = section(plan);
  CHECK(text.starts_with("WARNING Isocyanates in the hardener. No skin contact."));
  CHECK_FALSE(holds(text, "Waste."));
  CHECK_FALSE(holds(text, "More of it"));
}

TEST_CASE("a heater with a flame that runs in vapour is told on top with its hours") {
  Plan plan = judged_plan();
  plan.heater_clash =
      HeaterClash{HeaterKind::flame, {{at("2027-04-10T14:00:00Z"), at("2027-04-10T18:10:00Z")}}};
  const std::string text = section(plan);
  CHECK(text.starts_with("DANGER Your heater has a flame"));
  CHECK(holds(text, "Sat Apr 10, 10:00 am to 2:10 pm"));
  plan.heater_clash->kind.reset();
  CHECK(section(plan).starts_with("WARNING If your heater has a flame or glows"));
}
