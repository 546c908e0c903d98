#include "tackfree/html/air_chart.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("air, dew point, the coating's least temperature and each coat's drying are drawn") {
  Plan plan = small_plan();
  plan.course.air[3].temperature = celsius(5);
  Markup html;
  write_air_chart(html, plan, StepWords(plan));
  CHECK(html.is_closed());
  CHECK(holds(html.markup(), "<polyline class=\"air\""));
  CHECK(holds(html.markup(), "<polyline class=\"dew\""));
  CHECK(holds(html.markup(), "varnish 50 \u00b0F to 90 \u00b0F, up to 80 % RH"));
  CHECK(holds(html.markup(), "<path class=\"outside\""));
  CHECK(holds(html.markup(), "<polygon class=\"drying\""));
  CHECK(holds(html.markup(), "seat, coat 1 back: dry to handle Sat Apr 10, 11:40 pm."));
}

TEST_CASE("humidity is drawn where the air is ever too damp for the coat, and only there") {
  Plan plan = small_plan();
  const auto written = [&] {
    Markup html;
    write_air_chart(html, plan, StepWords(plan));
    return html.markup();
  };
  CHECK_FALSE(holds(written(), "<polyline class=\"humid\""));
  plan.course.air[3].humidity = humidity_percent(81);
  CHECK(holds(written(), "<polyline class=\"humid\""));
  CHECK(holds(written(), ">Humidity, %<"));
}

TEST_CASE("the same stands in tables by day and by coat") {
  const Plan plan = small_plan();
  Markup html;
  write_air_chart(html, plan, StepWords(plan));
  CHECK(holds(html.markup(), "<bdi>Fri Apr 9</bdi>"));
  CHECK(holds(html.markup(), "<bdi>seat: coat 1 of 2, back</bdi>"));
  CHECK(holds(html.markup(), "<bdi>Sat Apr 10, 11:40 pm</bdi>"));
}
