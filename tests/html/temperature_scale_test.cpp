#include "tackfree/html/temperature_scale.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the scale goes in round steps past the coldest dew point and the warmest air") {
  Plan plan = small_plan();
  plan.course.air = {{plan.now, celsius(21), celsius(3)}};
  const TemperatureScale metric(plan, Figures(small_job({}, UnitSystem::metric)), {10, 110});
  CHECK(metric.steps().front() == celsius(0));
  CHECK(metric.steps().back() == celsius(25));
  CHECK(metric.y(celsius(25)) == 10);
  CHECK(metric.y(celsius(0)) == 110);
  CHECK(metric.y(celsius(12.5)) == doctest::Approx(60));
  CHECK(metric.y(celsius(60)) == 10);
  CHECK_FALSE(metric.shows(celsius(26)));
  const TemperatureScale us(plan, Figures(plan.job), {10, 110});
  CHECK(scale_words(us.steps().front(), Figures(plan.job)) == "30 \u00b0F");
  CHECK(scale_words(us.steps().back(), Figures(plan.job)) == "70 \u00b0F");
}

TEST_CASE("a mark of the scale is in one unit even where the job asks for both") {
  const Figures both(small_job({}, UnitSystem::both));
  CHECK(scale_words(celsius(10), both) == "10 \u00b0C");
  CHECK(scale_number(celsius(10), both) == "10");
}
