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
    const std::size_t to = whole.find("GRITS");
    REQUIRE(from < to);
    CHECK(holds(list, whole.substr(from, to - from)));
    CHECK(list.starts_with("HALL BENCH\nInvented for this test.\n"));
    CHECK(holds(list, "\nBuy   1 x 1 qt varnish; 1 x 1 pt mineral spirits\n"));
    CHECK(list.ends_with("The product's label and safety data sheet govern.\n"));
    for (const char* other : {"DAY BY DAY", "AREAS TO COAT", "Work ", "HOW TO"})
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
  CHECK(holds(text_report(small_plan(), 120),
              "Work  2 h 10 min in all, on 3 days: sand bare 30 min, coat 1 h, turn over 10 min, "
              "set up 10 min, clean up 20 min;"));
  CHECK(holds(text_report(small_plan(), 200), "clean up 20 min; 30 min more that found no time\n"));
}

TEST_CASE("the text begins with the job, its note and the next step") {
  const std::string text = text_report(small_plan());
  CHECK(text.starts_with("HALL BENCH\nInvented for this test.\n"));
  CHECK(holds(text, "Next  today, 5:00 pm: seat: sand bare wood, P120 (15 min)\n"));
}

TEST_CASE("a step says what to pour and why it waited") {
  const std::string text = text_report(small_plan());
  CHECK(holds(text, "too cold to coat (under 50 \u00b0F) [practice] until 10:10 am"));
  CHECK(holds(text, "coat 1, back, dry to handle Sat Apr 10, 11:40 pm"));
  CHECK(holds(text, "(8 h usual"));
  CHECK(holds(text, "pour 3.7 fl oz (110 ml): 3.4 varnish + 0.3 mineral spirits\n"));
}

TEST_CASE("the sums printed are the sums held") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  const std::string text = text_report(plan);
  CHECK(holds(text, "  all parts       1.50       0.05  1.55\n"));
  CHECK(holds(text, "  in all                                          210     200       10\n"));
  CHECK(holds(text, "expected            200 ml\n"));
  CHECK(holds(text, "nine jobs in ten    240 ml or less: buy for this\n"));
}

TEST_CASE("a step without a time is printed with the way out and the rest still is") {
  const std::string text = text_report(small_plan());
  CHECK(holds(text, "NO TIME FOUND"));
  CHECK(holds(text, "seat: coat 2 of 2, show side: too cold to coat whenever you can work"));
  CHECK(holds(text, "DAY BY DAY"));
  CHECK(holds(text, "no date yet"));
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
