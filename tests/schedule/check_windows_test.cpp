#include "tackfree/schedule/check_windows.hpp"

#include <algorithm>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::vector<std::string> past_window(const testing::Scheduled& s) {
  return broken_windows(s.job, s.list, s.schedule);
}

TEST_CASE("a coat past the window is found, and not where all of its side is sanded before") {
  testing::Scheduled s = testing::scheduled(testing::unsanded_job(days(7)));
  CHECK(past_window(s).empty());
  s.job.coatings[0].recoat_unsanded_within->value = hours(12);
  CHECK(past_window(s).size() == 2);
  const std::string second = "top/finish/coat-2/both/coat";
  CHECK(past_window(s)[0].find(second) == 0);
  // Sanded before the second coat, all over; then in spots alone.
  Operation sanding = s.list.operations[s.step(second)->operation];
  sanding.kind = OperationKind::repair;
  sanding.coating.reset();
  sanding.grit = Grit{320};
  s.list.operations.push_back(sanding);
  const auto above = std::ranges::find_if(s.schedule.steps, [&](const DatedStep& step) {
    return s.list.operations[step.operation].key == second;
  });
  DatedStep step;
  step.operation = s.list.operations.size() - 1;
  step.pieces = {{above->begin() - Minutes(60), above->begin() - Minutes(30)}};
  s.schedule.steps.insert(above, step);
  CHECK(past_window(s).size() == 1);
  s.list.operations.back().spots = true;
  CHECK(past_window(s).size() == 2);
}

TEST_CASE("exactly at the end of the window a coat is in time, a minute later it is not") {
  testing::Scheduled s = testing::scheduled(testing::unsanded_job(days(7)));
  const Minutes since =
      s.step("top/finish/coat-2/both/coat")->begin() - s.step("top/finish/coat-1/both/coat")->end();
  const Minutes then =
      s.step("top/finish/coat-3/both/coat")->begin() - s.step("top/finish/coat-2/both/coat")->end();
  auto& window = s.job.coatings[0].recoat_unsanded_within->value;
  window = to_duration(std::max(since, then));
  CHECK(past_window(s).empty());
  window = to_duration(std::max(since, then) - Minutes(1));
  CHECK_FALSE(past_window(s).empty());
}

}  // namespace
}  // namespace tackfree
