#include "tackfree/document/background_sections.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("advice that two coatings share is printed once") {
  Plan plan = small_plan();
  plan.job.coatings.push_back(plan.job.coatings[0]);
  plan.volumes.coatings.push_back({1, litres(0.1), litres(0), 1.2});
  TextPage page(80);
  write_how_to(page, plan, HowTo(plan));
  const std::size_t first = page.text().find("Stir satin");
  REQUIRE(first != std::string::npos);
  CHECK(page.text().find("Stir satin", first + 1) == std::string::npos);
}

TEST_CASE("a caution leads with its word and a note with what it is about") {
  const Plan plan = small_plan();
  TextPage page(80);
  write_cautions(page, plan);
  write_notes(page, plan.notes, plan.job, plan.list, Figures(plan.job));
  CHECK(page.text() ==
        "CAUTIONS\n"
        "WARNING Rags heat themselves. Fire. Spread them flat outside.\n\n"
        "LOOK AT THIS\n"
        "  ! film: \"seat\": 2 coats leave less dry film than this wear asks for; plan\n"
        "    another coat, or expect less.\n");
}
