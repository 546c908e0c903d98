#include "tackfree/document/area_section.hpp"

#include "tackfree/text/text_page.hpp"

#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("only grains that occur have a column and masked lengths are listed") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  TextPage page(80);
  write_areas(page, plan.job, plan.takeoff, Figures(plan.job));
  const std::string& text = page.text();
  CHECK(holds(text, "  part (m\u00b2)       face  end grain   all\n"));
  CHECK(holds(text, "  4 x leg         0.60          -  0.60\n"));
  CHECK(holds(text, "  Masked: 1.5 m of tape on seat board\n"));
}

TEST_CASE("only sides that occur have a column and the rows add up") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  TextPage page(80);
  write_areas_by_side(page, plan.job, plan.takeoff, Figures(plan.job));
  const std::string& text = page.text();
  CHECK(holds(text, "  part (m\u00b2)        top  bottom  left  side   all\n"));
  CHECK(holds(text, "  1 x seat board  0.50    0.40  0.05     -  0.95\n"));
  CHECK(holds(text, "  all parts       0.50    0.40  0.05  0.60  1.55\n"));
}

TEST_CASE("a wide page shows the sides that are coated one after the other as well") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  TextPage page(120);
  write_areas(page, plan.job, plan.takeoff, Figures(plan.job));
  const std::string& text = page.text();
  CHECK(holds(text, "  part (m\u00b2)       face  end grain  back  show side   all\n"));
  CHECK(holds(text, "  1 x seat board  0.90       0.05  0.40       0.55  0.95\n"));
}
