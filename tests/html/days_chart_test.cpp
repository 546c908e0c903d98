#include "tackfree/html/days_chart.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("the days are drawn with work, drying, the person's hours and the batch's name") {
  const Plan plan = small_plan();
  Markup html;
  write_days_chart(html, plan, StepWords(plan));
  CHECK(html.is_closed());
  CHECK(holds(html.markup(), "Work and waits, Fri Apr 9 to Sun Apr 11"));
  CHECK(
      holds(html.markup(), "<title>Sat Apr 10, 9:00 am: sand bare wood, P120; coat 1 of 2, back"));
  CHECK(holds(html.markup(), "class=\"drying\""));
  CHECK(holds(html.markup(), ">coat 1 back<") == false);
  CHECK(holds(html.markup(), ">sand, coat 1 back<"));
  CHECK(holds(html.markup(), ">seat<"));
}

TEST_CASE("the same stands in a table, each wait with its reason") {
  const Plan plan = small_plan();
  Markup html;
  write_days_chart(html, plan, StepWords(plan));
  CHECK(holds(html.markup(), "<summary>The same as a table</summary>"));
  CHECK(holds(html.markup(), "<bdi>dries</bdi>"));
  CHECK(holds(html.markup(), "<bdi>waits: air unfit for the coat</bdi>"));
  CHECK(holds(html.markup(), "<bdi>turn over</bdi>"));
}

TEST_CASE("a batch without anything in these days, and hours without any, have no row") {
  Plan plan = small_plan();
  const auto written = [&] {
    Markup html;
    write_days_chart(html, plan, StepWords(plan));
    return html.markup();
  };
  CHECK(holds(written(), "class=\"batch\" x=\"32\""));
  CHECK(holds(written(), ">legs</text>"));
  CHECK_FALSE(holds(written(), ">quiet hours: no power sanding</text>"));
  std::erase_if(plan.course.waits, [](const WaitSpan& wait) { return wait.batch == 1; });
  std::erase_if(plan.schedule.steps, [](const DatedStep& step) { return step.operation == 2; });
  plan.schedule.outcomes.clear();
  CHECK_FALSE(holds(written(), ">legs</text>"));
}

TEST_CASE("nothing is drawn where no step is dated") {
  Plan plan = small_plan();
  plan.schedule.steps.clear();
  Markup html;
  write_days_chart(html, plan, StepWords(plan));
  CHECK(html.markup().empty());
}
