#include "tackfree/report/text_fumes.hpp"

#include "tackfree/report/display_text.hpp"
#include "tackfree/report/text_page.hpp"

#include <algorithm>
#include <regex>

#include "report/judged_plan.hpp"
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
  CHECK(holds(text, "Airing as you gave it: door open while coating, then open for 3 h"));
  CHECK(holds(text, "20 g; door open "));
  CHECK(holds(text, "below the 8-hour limits from "));
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
  CHECK(holds(text, "at least 100 m3/h (59 cfm) of outdoor air"));
}

TEST_CASE("without a judgement the section says what is missing") {
  Plan plan = small_plan();
  plan.job.room.volume.reset();
  CHECK(holds(section(plan), "The room's volume is not known"));
}

TEST_CASE("nothing in the section calls anything safe or gives leave") {
  for (const HabitVerdict verdict :
       {HabitVerdict::enough, HabitVerdict::too_little, HabitVerdict::needlessly_long}) {
    Plan plan = judged_plan();
    plan.room->verdict = verdict;
    CHECK_FALSE(std::regex_search(section(plan), std::regex("\\b[Ss]afe(ly)?\\b")));
  }
}
