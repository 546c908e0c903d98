#include "tackfree/words/airing_words.hpp"

#include "small_plan.hpp"
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
        "door open 6:30 to 8:55 pm, then door ajar until 10:55 pm");
  CHECK(airing_words({spans[1]}, at("2027-04-11T01:00:00Z"), figures) ==
        "door ajar until 10:55 pm");
  CHECK(airing_words({}, at("2027-04-11T01:00:00Z"), figures).empty());
}

TEST_CASE("an airing that ends after midnight names the day") {
  const Plan plan = small_plan();
  CHECK(airing_words({span("2027-04-11T03:00:00Z", "2027-04-11T05:10:00Z", Opening::open)},
                     at("2027-04-10T20:00:00Z"),
                     Figures(plan.job)) == "door open 11:00 pm to Sun Apr 11, 1:10 am");
}

TEST_CASE("a job without an airing has none") { CHECK(airing_of(small_plan()).empty()); }
