#include "tackfree/words/gate_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a rule of the air is a sentence with its limit, in the units of the job") {
  const Plan in_us = small_plan();
  const Plan in_metric = small_plan({}, UnitSystem::metric);
  const CoatingLimits& limits = in_us.job.coatings[0].limits;
  CHECK(gate_sentence(Gate::too_cold, limits, "until 9:00 am", Figures(in_us.job)) ==
        "It is too cold to coat until 9:00 am (the limit is 50 \u00b0F)");
  CHECK(gate_sentence(Gate::too_cold, limits, "until 09:00", Figures(in_metric.job)) ==
        "It is too cold to coat until 09:00 (the limit is 10 \u00b0C)");
  CHECK(gate_sentence(Gate::cold_before_dry, limits, "until 09:00", Figures(in_metric.job)) ==
        "A coat put on until 09:00 would get colder than 5 \u00b0C before it is touch-dry");
}

TEST_CASE("what keeps a piece waiting names the piece") {
  CHECK(gate_clause(Gate::too_humid, "seat") == "it is too damp to coat seat");
  CHECK(gate_clause(Gate::cold_within_hold, "seat") == "a fresh coat on seat would get too cold");
}
