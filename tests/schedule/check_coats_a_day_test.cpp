#include "tackfree/schedule/check_coats_a_day.hpp"

#include <algorithm>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// Shellac in one go, four coats on one long day.
testing::Scheduled four_in_a_day() {
  Job job = testing::sample_job("shellac");
  job.batches[0].sides = Sides::on_points;
  job.coatings[0].needs_sanding_between = false;
  job.systems[0].steps[0].coats = 4;
  for (auto& day : job.calendar.weekly) day = {{0, 24 * 60}};
  job.calendar.no_power_sanding.clear();
  job.coatings[0].coats_a_day_max = sourced(4, Origin::measured);
  testing::Scheduled made = testing::scheduled(job, "2027-04-05T00:00Z");
  made.job.coatings[0].coats_a_day_max = sourced(3, Origin::practice);
  return made;
}

TEST_CASE("the fourth coat of a day is found where three melt together, and none on two days") {
  testing::Scheduled made = four_in_a_day();
  const std::vector<std::string> broken = broken_coats_a_day(made.job, made.list, made.schedule);
  REQUIRE(broken.size() == 1);
  CHECK(broken[0].find("top/finish/coat-4/both/coat is one coat too many on 2027-04-05") == 0);
  for (DatedStep& step : made.schedule.steps)
    if (made.list.operations[step.operation].key == "top/finish/coat-4/both/coat")
      step.pieces[0].begin += one_day;
  CHECK(broken_coats_a_day(made.job, made.list, made.schedule).empty());
}

TEST_CASE("a coat that was washed off or left out does not count for its day") {
  testing::Scheduled made = four_in_a_day();
  const auto second = std::ranges::find_if(made.schedule.steps, [&](const DatedStep& step) {
    return made.list.operations[step.operation].key == "top/finish/coat-2/both/coat";
  });
  REQUIRE(second != made.schedule.steps.end());
  testing::Scheduled left_out = made;
  left_out.list.operations[second->operation].done = Done{.skipped = true};
  CHECK(broken_coats_a_day(left_out.job, left_out.list, left_out.schedule).empty());
  Operation washing = made.list.operations[second->operation];
  washing.coating.reset();
  washing.takes_off = true;
  DatedStep step = *second;
  step.operation = made.list.operations.size();
  made.list.operations.push_back(washing);
  made.schedule.steps.insert(second + 1, step);
  CHECK(broken_coats_a_day(made.job, made.list, made.schedule).empty());
}

}  // namespace
}  // namespace tackfree
