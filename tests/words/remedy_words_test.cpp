#include "tackfree/words/remedy_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a remedy says what, when, what comes of it, and the key with the same figures") {
  Plan plan = small_plan();
  const Remedy warm{.change = ConditionedAir{.time = Interval{at("2027-04-10T12:00:00Z"),
                                                              at("2027-04-11T03:00:00Z")},
                                             .warmer = fahrenheit_degrees(4),
                                             .heater = HeaterKind::sealed},
                    .operation = 3,
                    .begins = at("2027-04-10T14:00:00Z"),
                    .ready_at = {}};
  plan.remedies = {warm};
  CHECK(
      remedy_words(warm, plan, StepWords(plan)) ==
      "With the room 4 \u00b0F warmer from Sat Apr 10, 8:00 am until 11:00 pm: seat: coat 2 of 2, "
      "show side, can begin Sat Apr 10, 10:00 am. Other steps still find no time.");
  // What warms it is left for the person to say: "sealed" would end a warning unasked.
  CHECK(remedy_key(warm, plan.job) ==
        R"("air": {"conditioned": [{"from": "2027-04-10T08:00", "until": "2027-04-10T23:00", )"
        R"("warmer_f": 4}]})");
  CHECK(warming_words(plan.remedies)
            .starts_with("Warm the room with nothing that has a flame or glows"));
}

TEST_CASE("a longer evening has its minutes, its day and its new end") {
  Plan plan = small_plan();
  const Remedy longer{.change = AddedHours{parse_date("2027-04-09").value(), {{21 * 60, 22 * 60}}},
                      .operation = 3,
                      .begins = at("2027-04-10T01:00:00Z"),
                      .ready_at = at("2027-04-12T03:00:00Z")};
  plan.remedies = {longer};
  CHECK(
      remedy_words(longer, plan, StepWords(plan)) ==
      "With 60 min more work on Fri Apr 9, until 10:00 pm: seat: coat 2 of 2, show side, can begin "
      "Fri Apr 9, 9:00 pm. All is ready for light use by Sun Apr 11, 11:00 pm.");
  CHECK(remedy_key(longer, plan.job) ==
        R"("calendar": {"added": [{"on": "2027-04-09", "hours": ["21:00-22:00"]}]})");
  CHECK(warming_words(plan.remedies).empty());
}
