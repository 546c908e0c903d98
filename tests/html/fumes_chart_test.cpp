#include "tackfree/html/fumes_chart.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("each limit has a bar with its figure, and what passes its limit looks different") {
  const Plan plan = judged_plan();
  Markup html;
  write_fumes_chart(html, plan, Figures(plan.job));
  CHECK(html.is_closed());
  CHECK(holds(html.markup(), "class=\"over\""));
  CHECK(holds(html.markup(), "class=\"under\""));
  CHECK(holds(html.markup(), ">at work, 8 h: 1.3 times<"));
  CHECK(holds(html.markup(), "at work, 8 h: 1.3 times the limit."));
}

TEST_CASE("each stretch of coating has its vapour drawn, with the airing below") {
  const Plan plan = judged_plan();
  Markup html;
  write_fumes_chart(html, plan, Figures(plan.job));
  CHECK(holds(html.markup(), "Vapour from Sat Apr 10, 10:00 am"));
  CHECK(holds(html.markup(), "At most 2.0 times the 8-hour limits, Sat Apr 10, 10:00 am."));
  CHECK(holds(html.markup(), "<polyline class=\"vapour\""));
  CHECK(holds(html.markup(), "<rect class=\"airing\""));
}

TEST_CASE("nothing is drawn where the room was not judged") {
  const Plan plan = small_plan();
  Markup html;
  write_fumes_chart(html, plan, Figures(plan.job));
  CHECK(html.markup().empty());
}
