#include "tackfree/words/air_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a source goes by its name, typical months without one by the month they begin with") {
  CHECK(source_words({.name = "forecast"}) == "forecast");
  CHECK(source_words({.typical_month = 4}) == "typical April values");
  CHECK(source_words({.name = "what is usual", .typical_month = 4}) == "what is usual");
  CHECK(source_words({}).empty());
}

TEST_CASE("a month without values of its own is told with the one that serves for it") {
  CHECK(held_month_words({.month = 6, .held = 5}) ==
        "June has no typical values of its own: the plan uses those of May for it.");
}

TEST_CASE("what is done to the air is told with its hours, or throughout") {
  const Plan plan = small_plan();
  const Figures figures(plan.job);
  CHECK(conditioned_words({.time = Interval{at("2027-04-10T14:00:00Z"), at("2027-04-11T03:00:00Z")},
                           .warmer = fahrenheit_degrees(4)},
                          figures) == "4 \u00b0F warmer from Sat Apr 10, 10:00 am until 11:00 pm");
  CHECK(conditioned_words({.warmer = fahrenheit_degrees(4), .drier = humidity_percent(10)},
                          figures) ==
        "4 \u00b0F warmer and 10 points of humidity drier throughout");
}

TEST_CASE("air that nobody has read is called a forecast only where it is one") {
  CHECK(record_words(ConstantAir{}) == "as you gave it");
  AirRows rows;
  CHECK(record_words(rows) == "by the hours of your file");
  rows.recorded_in = 2013;
  CHECK(record_words(rows) == "by the hours recorded in 2013, not a forecast");
  AirMix mix;
  mix.sources = {{.name = "forecast", .what = AirDays{}}};
  CHECK(record_words(mix) == "by the forecast");
  mix.sources = {{.name = "", .what = AirMonths{}}};
  CHECK(record_words(mix) == "by typical months");
}
