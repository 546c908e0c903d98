#include "tackfree/schedule/plan_size.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

Problems found(const Job& job, std::size_t steps) {
  Problems problems;
  check_plan_size(job, steps, problems);
  return problems;
}

TEST_CASE("a plan that is too large is refused with a grid and a horizon that are small enough") {
  Job job = testing::sample_job("shellac");
  job.grid = Minutes(1);
  job.horizon = days(366);
  const std::size_t steps = 80;
  const Problems large = found(job, steps);
  REQUIRE(large.size() == 1);
  CHECK(large[0].key == "horizon_days");
  CHECK(large[0].wanted ==
        "wanted a smaller plan; 366 days ahead on a grid of 1 min are too many for 80 steps of "
        "work");
  CHECK(
      large[0].hint ==
      "\"grid_min\": 3 or \"horizon_days\": 138 makes it small enough, and so do fewer batches in "
      "one job");
  Job coarse = job;
  coarse.grid = Minutes(3);
  CHECK(found(coarse, steps).empty());
  coarse.grid = Minutes(2);
  CHECK(!found(coarse, steps).empty());
  job.horizon = days(138);
  CHECK(found(job, steps).empty());
  job.horizon = days(139);
  CHECK(!found(job, steps).empty());
}

TEST_CASE("so are too many batches, and too many steps") {
  Job job = testing::sample_job("shellac");
  job.horizon = days(14);
  CHECK(found(job, 1'200).empty());
  const Problem steps = found(job, 1'201).at(0);
  CHECK(steps.key == "batches");
  CHECK(steps.wanted ==
        "wanted at most 200 batches and lots, and 1200 steps of work, in one plan; this one has 1 "
        "and 1201");
  CHECK(steps.hint == "plan some of the batches in a job of their own");
  job.batches.resize(200, job.batches.front());
  CHECK(found(job, 1).empty());
  job.batches.resize(201, job.batches.front());
  const Problem batches = found(job, 1).at(0);
  CHECK(batches.wanted.find("this one has 201 and 1") != std::string::npos);
  CHECK(batches.hint == steps.hint);
}

}  // namespace
}  // namespace tackfree
