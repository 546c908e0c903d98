#include "tackfree/html/days_axis.hpp"

#include "shown_month.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("each day is as wide as the others, the day without two o'clock too") {
  const DaysAxis strip = days_axes(month, figures_beginning_on({})).at(1);
  CHECK(strip.midnights().at(1) - strip.midnights().at(0) == Minutes(23 * 60));
  const double first = strip.x(strip.midnights().at(1)) - strip.x(strip.midnights().at(0));
  const double second = strip.x(strip.midnights().at(2)) - strip.x(strip.midnights().at(1));
  CHECK(first == doctest::Approx(second));
}

TEST_CASE("what lies outside a strip stands at its ends, and its end within the chart") {
  const DaysAxis strip = days_axes(month, figures_beginning_on({})).front();
  CHECK(strip.day_count() == DaysAxis::most_days);
  CHECK(strip.x(strip.time().begin - Minutes(600)) == DaysAxis::left);
  CHECK(strip.x(strip.time().end + Minutes(600)) == strip.right());
  CHECK(strip.right() < DaysAxis::width);
}

TEST_CASE("days are named, weekends look different, and the ground has nights and now") {
  const Plan plan = small_plan();
  const Figures figures(plan.job);
  const DaysAxis strip = days_axes(plan.course.days, figures).front();
  Markup names, ground;
  write_day_names(names, strip, figures.zone());
  write_ground(ground, strip, plan, 20, 10);
  CHECK(holds(names.markup(), "class=\"weekend\""));
  CHECK(holds(names.markup(), "class=\"weekday\""));
  CHECK(holds(names.markup(), ">Sat 10<"));
  CHECK(holds(ground.markup(), "class=\"night\""));
  CHECK(holds(ground.markup(), "class=\"now\""));
  CHECK_FALSE(holds(ground.markup(), "class=\"seam\""));
  CHECK(days_caption(strip, plan, figures) == "Fri Apr 9 to Sun Apr 11");
  CHECK(ground_legend(plan, figures).size() == 2);
}
