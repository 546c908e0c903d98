#include "tackfree/plan/recoat_slack.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

TEST_CASE("unsanded coats have room to the end of the window below, sanded ones are not told") {
  Job job = testing::sample_job();
  job.batches[0].sides = Sides::on_points;
  Problems problems;
  const Instant now = testing::instant("2027-04-05T17:00Z");
  CHECK(recoat_slacks(make_plan(job, now, problems).value()).empty());
  job.coatings[0].needs_sanding_between = false;
  job.coatings[0].recoat_unsanded_within = sourced(days(7), Origin::label);
  const Plan plan = make_plan(job, now, problems).value();
  const auto slacks = recoat_slacks(plan);
  REQUIRE(slacks.size() == 2);
  const auto& steps = plan.schedule.steps;
  const DatedStep* below = nullptr;
  for (const DatedStep& step : steps)
    if (plan.list.operations[step.operation].coat == 1 && step.session) below = &step;
  REQUIRE(below != nullptr);
  CHECK(plan.list.operations[steps[slacks[0].dated_step].operation].coat == 2);
  // At 20 C the window is as long as the label's, at 23 C: see the rule of the warmest hour.
  CHECK(slacks[0].until == *below->dries_from + Minutes(7 * 24 * 60));
  CHECK(slacks[0].until >= steps[slacks[0].dated_step].begin());
}

}  // namespace
}  // namespace tackfree
