#include "tackfree/html/drying_track.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

DaysAxis first_strip(const Plan& plan) {
  return days_axes(plan.course.days, Figures(plan.job)).front();
}

}  // namespace

TEST_CASE("a coat that dries is a hill below its name and what it reaches") {
  const Plan plan = small_plan();
  Markup svg;
  CHECK(write_drying_track(svg, first_strip(plan), plan, 0, 0) > 0);
  CHECK(svg.is_closed());
  CHECK(holds(svg.markup(), ">seat: drying<"));
  CHECK(holds(svg.markup(), ">coat 1 back<"));
  CHECK(holds(svg.markup(), "<polygon class=\"drying\""));
  CHECK(holds(svg.markup(), "<polyline class=\"progress\""));
  CHECK(holds(svg.markup(), "<line class=\"reached\""));
}

TEST_CASE("a batch of which nothing dries in these days takes no room") {
  Plan plan = small_plan();
  const DaysAxis strip = first_strip(plan);
  plan.course.drying.clear();
  Markup svg;
  CHECK(write_drying_track(svg, strip, plan, 0, 0) == 0);
  CHECK(svg.markup().empty());
}
