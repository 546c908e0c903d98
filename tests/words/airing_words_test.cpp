#include "tackfree/words/airing_words.hpp"

#include "judged_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

AiringSpan span(const char* from, const char* to, Opening opening) {
  return {{at(from), at(to)}, opening};
}

}  // namespace

TEST_CASE("airing goes by the clock, one opening after another") {
  const Plan plan = small_plan();  // New York, four hours behind UTC in April
  const Figures figures(plan.job);
  const std::vector<AiringSpan> spans{
      span("2027-04-10T22:30:00Z", "2027-04-11T00:55:00Z", Opening::open),
      span("2027-04-11T00:55:00Z", "2027-04-11T02:55:00Z", Opening::ajar)};
  CHECK(airing_words(spans, at("2027-04-10T20:00:00Z"), figures) ==
        "open to outdoors 6:30 to 8:55 pm, then ajar to outdoors until 10:55 pm");
  CHECK(airing_words({spans[1]}, at("2027-04-11T01:00:00Z"), figures) ==
        "ajar to outdoors until 10:55 pm");
  CHECK(airing_words({}, at("2027-04-11T01:00:00Z"), figures).empty());
}

TEST_CASE("an airing that ends after midnight names the day") {
  const Plan plan = small_plan();
  CHECK(airing_words({span("2027-04-11T03:00:00Z", "2027-04-11T05:10:00Z", Opening::open)},
                     at("2027-04-10T20:00:00Z"),
                     Figures(plan.job)) == "open to outdoors 11:00 pm to Sun Apr 11, 1:10 am");
}

TEST_CASE("a job without an airing has none") { CHECK(airing_of(small_plan()).empty()); }

TEST_CASE("a habit that is too little gives way to the better one, and is told") {
  Plan plan = judged_plan();
  plan.job.room.airing = AiringHabit{Opening::open, Opening::open, hours(3)};
  const Figures figures(plan.job);
  REQUIRE(better_habit(plan) == AiringHabit{Opening::open, Opening::open, hours(5)});
  const auto own = airing_of(plan), better = airing_of(plan, *better_habit(plan));
  REQUIRE(own.size() == 1);
  CHECK(better.at(0).time.end == own[0].time.end + Minutes(120));
  CHECK(airing_advice(plan, own, better, figures) ==
        "open to outdoors 10:00 am to 4:10 pm. Your own habit (open to outdoors 10:00 am to 2:10 "
        "pm) is too "
        "little for these vapours by this estimate");
  CHECK(airing_advice(plan, {}, better, figures) ==
        "open to outdoors 10:00 am to 4:10 pm. Keeping the room closed is too little for these "
        "vapours by "
        "this estimate");
  CHECK(airing_advice(plan, {}, {}, figures).empty());
  plan.room->proposed.reset();
  CHECK_FALSE(better_habit(plan));
  CHECK(airing_advice(plan, own, {}, figures) ==
        "open to outdoors 10:00 am to 2:10 pm. That is too little for these vapours by this "
        "estimate, and "
        "nothing else that was tried serves: coat less at a time, or outdoors");
  plan.room->stretches[0].too_little = false;  // but for another day
  CHECK(airing_advice(plan, own, {}, figures) == "open to outdoors 10:00 am to 2:10 pm");
}

TEST_CASE("the better airing is nowhere less than the own: not as far, nor for less long") {
  const Plan plan = judged_plan();
  const std::vector<AiringSpan> ajar{
      span("2027-04-10T14:00:00Z", "2027-04-10T18:10:00Z", Opening::ajar)};
  const std::vector<AiringSpan> wide{
      span("2027-04-10T14:00:00Z", "2027-04-10T17:10:00Z", Opening::open)};
  const Figures figures(plan.job);
  CHECK(airing_advice(plan, ajar, wide, figures)
            .starts_with("open to outdoors 10:00 am to 1:10 pm, then ajar to outdoors until 2:10 "
                         "pm. Your own habit"));
  CHECK(airing_advice(plan, wide, {}, figures) == "open to outdoors 10:00 am to 1:10 pm");
  CHECK(airing_advice(plan, wide, ajar, figures)
            .starts_with("open to outdoors 10:00 am to 1:10 pm, then ajar to outdoors until 2:10 "
                         "pm. Your own habit"));
}
