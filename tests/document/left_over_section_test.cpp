#include "tackfree/document/left_over_section.hpp"

#include "tackfree/text/text_page.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Plan plan_with_rests() {
  Plan plan = small_plan({}, UnitSystem::metric);
  plan.left_over.coatings = {{.coating = 0, .expected = litres(0.6), .nine_in_ten = litres(0.5)}};
  plan.left_over.thinners = {{"mineral spirits", litres(0.4), {}}};
  plan.left_over.waste = {{{"wash", "Wash", "Let it settle."}, {0}}};
  return plan;
}

std::string left_text(const Plan& plan) {
  TextPage page(80);
  write_left_over(page, plan, Figures(plan.job));
  return page.text();
}

}  // namespace

TEST_CASE("what is left stands before how to get rid of it, and labels and local rules go first") {
  CHECK(left_text(plan_with_rests()) ==
        "WHAT IS LEFT OVER\n"
        "  - varnish: likely 600 ml; in nine jobs out of ten at least 500 ml.\n"
        "  - mineral spirits: likely 400 ml. It does not spoil.\n"
        "How to get rid of it\n"
        "  The labels, the safety data sheets and your local rules go before this.\n"
        "  - Wash: Let it settle.\n");
}

TEST_CASE("waste of one coating among several is told with its name") {
  Plan plan = plan_with_rests();
  CHECK_FALSE(holds(left_text(plan), "Wash (varnish)"));
  plan.shopping.coatings.push_back(plan.shopping.coatings[0]);
  CHECK(holds(left_text(plan), "  - Wash (varnish): Let it settle.\n"));
}

// The caution on them says what to do; it is not said twice.
TEST_CASE("oily rags are sent to their caution") {
  Plan plan = plan_with_rests();
  CHECK_FALSE(holds(left_text(plan), "Oily rags"));
  plan.job.coatings[0].dries_by_oxidation = true;
  CHECK(holds(left_text(plan), "  - Oily rags: the same evening, as the caution on them says.\n"));
}

TEST_CASE("nothing is said of a plan without coatings and thinners") {
  Plan plan = plan_with_rests();
  plan.left_over = {};
  CHECK(left_text(plan).empty());
}

TEST_CASE("the shelf tells each tin by the log, and one past its time") {
  WorkAtHand work = small_plan({}, UnitSystem::metric);
  work.job.coatings[0].tin_keeps = sourced(days(365), Origin::practice);
  work.job.coatings[0].on_shelf = {{litres(0.5), parse_date("2026-04-08")},
                                   {litres(0.3), parse_date("2026-04-09")},
                                   {litres(1), {}}};
  TextPage page(80);
  write_shelf(page, work);
  CHECK(page.text() ==
        "IN THE TINS NOW\n"
        "varnish (oil-based polyurethane varnish)\n"
        "  - 500 ml, opened in April 2026: past its time\n"
        "  - 300 ml, opened in April 2026, keeps until about April 2027\n"
        "  - 1.00 L\n");
}
