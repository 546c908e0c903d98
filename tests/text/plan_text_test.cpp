#include "tackfree/text/plan_text.hpp"

#include "tackfree/words/display_text.hpp"

#include <sstream>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

void check_lines(const std::string& text, std::size_t columns) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    CHECK_MESSAGE(display_width(line) <= columns, line);
    CHECK_MESSAGE(clean(line) == line, line);
  }
}

}  // namespace

TEST_CASE("no line of the text is wider than asked, whatever the names") {
  const std::string hostile = hostile_name();
  for (const int columns : {40, 80, 120})
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      check_lines(text_report(small_plan({}, units), columns), static_cast<std::size_t>(columns));
      check_lines(text_report(small_plan({hostile, hostile, hostile, hostile}, units), columns),
                  static_cast<std::size_t>(columns));
    }
}

TEST_CASE("the text is the same on a second run") {
  CHECK(text_report(small_plan()) == text_report(small_plan()));
}

TEST_CASE("the shopping list has the plan's own lines on what to buy, and no more of it") {
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    const Plan plan = small_plan({}, units);
    const std::string whole = text_report(plan), list = text_shopping_list(plan);
    const std::size_t from = whole.find("FINISH: HOW MUCH, WHICH TINS");
    const std::size_t to = whole.find("AREAS TO COAT");
    REQUIRE(from < to);
    CHECK(holds(list, whole.substr(from, to - from)));
    CHECK(list.starts_with("HALL BENCH\nInvented for this test.\n"));
    CHECK(holds(list, "\nBuy   1 x 1 qt varnish; 1 x 1 pt mineral spirits\n"));
    CHECK(list.ends_with("The product's label and safety data sheet govern.\n"));
    for (const char* other : {"THE DAYS", "AREAS TO COAT", "Your own work", "HOW TO"})
      CHECK_FALSE(holds(list, other));
    check_lines(list, 80);
  }
}

TEST_CASE("the shopping list says when a coat has no time") {
  Plan plan = small_plan();
  CHECK(holds(text_shopping_list(plan), "some steps found no time"));
  plan.schedule.unplaced.clear();
  CHECK_FALSE(holds(text_shopping_list(plan), "found no time"));
}

TEST_CASE("the text says how long the work is, by kind, and what found no time") {
  // Sanding 2 x 15 min, two coats of 30, turning over 10; set-up 10, clean-up 20.
  CHECK(holds(
      text_report(small_plan(), 120),
      "Your own work: 2 h 10 min on 3 days (sand bare 30 min, coat 1 h, turn over 10 min, set "
      "up 10 min, clean up 20 min)"));
  CHECK(
      holds(text_report(small_plan(), 200), "clean up 20 min), and 30 min that found no time.\n"));
}

TEST_CASE("the text begins with the job, its note, its warnings and what to do now") {
  const std::string text = text_report(small_plan());
  CHECK(text.starts_with("HALL BENCH\nInvented for this test.\nAs of Fri Apr 9, 2027, 5:00 pm"));
  CHECK(holds(text, "\n\nWARNING Rags can catch fire: spread them flat outside.\n"));
  CHECK(holds(text, "Now   Until 5:15 pm (15 min of work). Sand bare wood, P120: seat.\n"));
}

TEST_CASE("a step says what to pour and why it waited") {
  const std::string text = text_report(small_plan());
  CHECK(holds(text, "It is too cold to coat until 10:10 am (the limit is 50 \u00b0F)"));
  CHECK(holds(text, "Coat 1 on the back can be handled from Sat Apr 10, 11:40 pm: 8 h"));
  CHECK(holds(text, "Pour 3.7 fl oz (110 ml): 3.4 varnish + 0.3 mineral spirits\n"));
}

TEST_CASE("the sums printed are the sums held") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  const std::string text = text_report(plan);
  CHECK(holds(text, "  all parts       1.50       0.05  1.55\n"));
  CHECK(holds(text, " 210     200       10\n"));
  CHECK(holds(text,
              "  You will likely use 200 ml. Buy for 240 ml, enough in nine jobs out of ten.\n"));
}

TEST_CASE("a step without a time is printed with the way out and the rest still is") {
  const std::string text = text_report(small_plan());
  CHECK(holds(text, "NO TIME FOUND"));
  CHECK(holds(text, "seat: coat 2 of 2, show side: too cold to coat whenever you can work"));
  CHECK(holds(text, "THE DAYS"));
  CHECK(holds(text, "No date yet"));
}

TEST_CASE("each how-to text is printed once and the steps carry its number") {
  const std::string text = text_report(small_plan());
  const std::size_t first = text.find("Thin only what goes into the pot.");
  REQUIRE(first != std::string::npos);
  CHECK(text.find("Thin only what goes into the pot.", first + 1) == std::string::npos);
  CHECK(holds(text, "#2 coat 1\n"));
  CHECK(holds(text, "  #2\n"));
}

TEST_CASE("cautions, sources and the deference are printed, the deference last") {
  const std::string text = text_report(small_plan());
  CHECK(holds(text, "WARNING Rags heat themselves. Fire. Spread them flat outside."));
  CHECK(holds(text, "published: above the dew point by 5.4 \u00b0F [MIL-HDBK-1110, par. 9.6.6]"));
  CHECK(text.ends_with("The product's label and safety data sheet govern.\n"));
}

TEST_CASE("one part is the plan's own, without origins and without the rest") {
  const Plan plan = small_plan();
  const std::string of_days = part_text(plan, PlanPart::day_by_day);
  CHECK(of_days.starts_with("HALL BENCH\nAs of Fri Apr 9, 2027"));
  CHECK(holds(of_days, "THE DAYS\n"));
  CHECK(holds(of_days, "WHEN YOU CAN USE IT\n"));
  CHECK_FALSE(holds(of_days, "[practice]"));
  CHECK_FALSE(holds(of_days, "AREAS TO COAT"));
  CHECK(of_days.ends_with("The product's label and safety data sheet govern.\n"));
  const std::string whole = text_report(plan);
  for (std::size_t part = 0; part < plan_part_words.size(); ++part) {
    const std::string text = part_text(plan, static_cast<PlanPart>(part));
    CAPTURE(plan_part_words.at(part));
    check_lines(text, 80);
    CHECK(holds(text, "There is nothing to tell here") ==
          (static_cast<PlanPart>(part) == PlanPart::progress));
    if (holds(text, "There is nothing to tell here")) continue;
    if (static_cast<PlanPart>(part) == PlanPart::day_by_day) continue;
    const std::size_t from = text.find("\n\n") + 1;
    const std::size_t to = text.find("\nThe product's label");
    std::istringstream lines(text.substr(from, to - from));
    for (std::string line; std::getline(lines, line);) CHECK_MESSAGE(holds(whole, line), line);
  }
}

TEST_CASE("the first screen tells how to see the rest, and the deference stands last") {
  const std::string text = first_screen_text(small_plan());
  CHECK(holds(text,
              "\nSee more: --only days (or warnings, buy, areas, coats, air, vapour), --full.\n"));
  CHECK(text.ends_with("The product's label and safety data sheet govern.\n"));
  check_lines(first_screen_text(small_plan(), 40), 40);
}
