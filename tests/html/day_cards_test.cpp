#include "tackfree/html/day_cards.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("each piece of work has a box to tick, its hour and its length") {
  const Plan plan = small_plan();
  Markup html;
  write_html_days(html, plan, StepWords(plan), HowTo(plan));
  CHECK(html.is_closed());
  CHECK(holds(html.markup(),
              "<label><input type=\"checkbox\"><span class=\"clock clock-8\">10:10 am</span> "
              "<bdi>seat: coat 1 of 2, back, at\u00A059\u00A0\u00b0F</bdi></label>"));
  CHECK(holds(html.markup(), "<b>Pour</b> <bdi>3.7 fl oz (110 ml): 3.4 varnish + 0.3 "));
  CHECK(holds(
      html.markup(),
      "<b>Why then:</b> <bdi>It is too cold to coat until 10:10 am (the limit is 50 \u00b0F)"));
}

TEST_CASE("each day is a block with room for readings and notes") {
  const Plan plan = small_plan();
  Markup html;
  write_html_days(html, plan, StepWords(plan), HowTo(plan));
  std::size_t blocks = 0, notes = 0;
  for (std::size_t at = 0;
       (at = html.markup().find("<div class=\"work-day\">", at)) != std::string::npos; ++at)
    ++blocks;
  for (std::size_t at = 0; (at = html.markup().find("<dt>Notes</dt>", at)) != std::string::npos;
       ++at)
    ++notes;
  CHECK(blocks == 3);
  CHECK(notes == 3);
}

TEST_CASE("a day of the page says how far the door is open, by the clock") {
  Plan plan = small_plan();
  plan.job.room.airing = AiringHabit{Opening::open, Opening::ajar, hours(2)};
  Markup html;
  write_html_days(html, plan, StepWords(plan), HowTo(plan));
  CHECK(holds(html.markup(), "<b>Airing</b> <bdi>door open 10:00 to 11:10 am, then door ajar"));
}

TEST_CASE("a day of the page gives the better airing where the job's own is too little") {
  Plan plan = judged_plan();
  plan.job.room.airing = plan.room->habit;
  Markup html;
  write_html_days(html, plan, StepWords(plan), HowTo(plan));
  CHECK(holds(html.markup(),
              "<b>Airing</b> <bdi>door open 10:00 am to 4:10 pm. Your own habit (door open"));
}
