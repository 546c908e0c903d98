#include "tackfree/html/day_cards.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::string written(const Plan& plan) {
  Markup html;
  write_day_cards(html, plan, StepWords(plan), HowTo(plan));
  CHECK(html.is_closed());
  return html.markup();
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; ++at) ++count;
  return count;
}

}  // namespace

TEST_CASE("a step's whole row is its box to tick, with its hour, its length and what is done") {
  const std::string html = written(small_plan());
  CHECK(holds(html,
              "<label><input type=\"checkbox\"><span class=\"line\"><span class=\"when\"><b>10:10 "
              "am</b> <span class=\"length\">30 min</span></span>"));
  CHECK(holds(html, "<span class=\"what\"><bdi>seat: coat 1 of 2, back, at"));
  CHECK(holds(html, "<b>Pour</b> <bdi>3.7 fl oz (110 ml): 3.4 varnish + 0.3 "));
}

TEST_CASE("how a step is done and why it waited unfold inside its step") {
  const std::string html = written(small_plan());
  CHECK(holds(html, "<details class=\"how\"><summary>How</summary>"));
  CHECK(holds(html, "<li><bdi>Thin only what goes into the pot.</bdi></li>"));
  CHECK(holds(html, "<p class=\"why\">"));
}

TEST_CASE("each session is a block, and each coat has room for readings") {
  const std::string html = written(small_plan());
  CHECK(count_of(html, "<div class=\"session\">") == 3);
  CHECK(count_of(html, "<dt>Boards</dt>") == 2);
}

TEST_CASE("a session says how to air, by the clock") {
  Plan plan = small_plan();
  plan.job.room.airing = AiringHabit{Opening::open, Opening::ajar, hours(2)};
  CHECK(
      holds(written(plan),
            "<p class=\"airing\"><bdi>Open to outdoors 10:00 to 11:10 am, then ajar to outdoors"));
}

TEST_CASE("a session gives the better airing where the job's own is too little") {
  Plan plan = judged_plan();
  plan.job.room.airing = plan.room->habit;
  CHECK(holds(written(plan),
              "<bdi>Open to outdoors 10:00 am to 4:10 pm. Your own habit (open to outdoors"));
}
