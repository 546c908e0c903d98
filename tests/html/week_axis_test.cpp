#include "tackfree/html/week_axis.hpp"

#include "shown_month.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("each day is as wide as the others, the day without two o'clock too") {
  const WeekAxis week = week_axes(month, figures_beginning_on({})).at(1);
  CHECK(week.midnights().at(1) - week.midnights().at(0) == Minutes(23 * 60));
  const double first = week.x(week.midnights().at(1)) - week.x(week.midnights().at(0));
  const double second = week.x(week.midnights().at(2)) - week.x(week.midnights().at(1));
  CHECK(first == doctest::Approx(second));
}

TEST_CASE("what lies outside a week stands at its ends") {
  const WeekAxis week = week_axes(month, figures_beginning_on({})).front();
  CHECK(week.x(week.time().begin - Minutes(600)) == WeekAxis::left);
  CHECK(week.x(week.time().end + Minutes(600)) == week.right());
}

TEST_CASE("the axis marks weekends, nights, now, and where known air ends") {
  Plan plan = small_plan();
  Markup svg;
  write_axis(svg, week_axes(plan.course.days, Figures(plan.job)).front(), plan, Figures(plan.job),
             100);
  const std::string& axis = svg.markup();
  CHECK(axis.find("class=\"weekend\"") != std::string::npos);
  CHECK(axis.find("class=\"night\"") != std::string::npos);
  CHECK(axis.find(">now<") != std::string::npos);
  CHECK(axis.find("Sat Apr 10") != std::string::npos);
  CHECK(axis.find("class=\"seam\"") == std::string::npos);
}
