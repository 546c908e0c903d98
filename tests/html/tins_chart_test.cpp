#include "tackfree/html/tins_chart.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::string tins_written(const Plan& plan) {
  Markup html;
  write_tins(html, plan, Figures(plan.job));
  write_tins_chart(html, plan, Figures(plan.job));
  CHECK(html.is_closed());
  return html.markup();
}

}  // namespace

TEST_CASE("what to buy has a box to tick, with what is left over") {
  CHECK(holds(tins_written(small_plan()),
              "<bdi>1 x 1 qt varnish; left over, expected: 25.2 fl oz (746 ml)</bdi></label>"));
}

TEST_CASE("each tin is a box as wide as it holds, and those on the shelf look different") {
  Plan plan = small_plan();
  plan.shopping.coatings[0].on_shelf = us_quarts(1);
  plan.shopping.coatings[0].tins = {{2}, us_quarts(2), 48.0, true};
  const std::string html = tins_written(plan);
  CHECK(holds(html, "<rect class=\"shelf\" x=\"4\" y=\"0\" width=\"106.7\" height=\"22\">"));
  CHECK(holds(html, "<rect class=\"tin\" x=\"110.7\" y=\"0\" width=\"106.7\" height=\"22\">"));
  CHECK(holds(html, "<rect class=\"tin\" x=\"217.3\" y=\"0\" width=\"106.7\" height=\"22\">"));
  CHECK(holds(html, "Tins hold 3.00 qt; expected 6.8 fl oz, in nine jobs of ten 8.1 fl oz"));
}

TEST_CASE("what need not be bought has no box") {
  Plan plan = small_plan();
  plan.shopping.coatings[0].tins = {{0}, Volume(), 0, true};
  CHECK(holds(tins_written(plan), "<li>nothing varnish;"));
}
