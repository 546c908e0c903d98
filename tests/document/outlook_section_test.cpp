#include "tackfree/document/outlook_section.hpp"

#include "tackfree/text/screens.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

DryingExplanation wait_of(Instant begin) {
  return {.stage = Stage::recoat,
          .label = {hours(6), Origin::label, {}},
          .label_least = hours(4),
          .temperature = {2.0, Origin::practice, {}},
          .humidity = {1.0, Origin::assumed, {}},
          .film = {1.5, Origin::assumed, {}},
          .air_movement = {1.0, Origin::assumed, {}},
          .held = {1.0, Origin::practice, {}},
          .outside_label = 0.25,
          .begins = begin,
          .ends = begin + Minutes(18 * 60)};
}

}  // namespace

TEST_CASE("a wait is told as the product of what makes it, without factors of one") {
  const std::string text = explanation_text(wait_of(Instant{}));
  CHECK(holds(text,
              "6.00 h (the label's 4.00 h to 6.00 h) [label] x 2.000 temperature [practice] x "
              "1.500 film [assumed] = 18.00 h"));
  CHECK_FALSE(holds(text, "humidity"));
  CHECK(holds(text, "25 % of it outside the label's temperatures: extrapolated."));
}

TEST_CASE("an outlook says which rules fail, when they open, and that the window closes too soon") {
  const Plan plan = small_plan();
  const CoatOutlook outlook{.applied = plan.now,
                            .putting_on = Minutes(5),
                            .stages = {wait_of(plan.now)},
                            .never = {Stage::full_cure},
                            .gates = {{Gate::dew, std::nullopt}},
                            .recoat_unsanded_until = plan.now + Minutes(60)};
  const std::string text = outlook_text(plan.job, outlook);
  CHECK(holds(text, "too near the dew point"));
  CHECK(holds(text, "Not kept within two weeks."));
  CHECK(holds(text, "not within the plan's horizon"));
  CHECK(holds(text, "sand before the"));
  CHECK(holds(text, "Estimate") == holds(plan.job.data.texts.deference, "Estimate"));
}
