#include "tackfree/plan/areas.hpp"

#include "tackfree/plan/make_plan.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("the areas alone are those of the whole plan") {
  Problems problems;
  const Job job = testing::sample_job();
  const auto whole = make_plan(job, testing::instant("2027-04-05T17:00Z"), problems);
  const Areas areas = areas_of(job);
  REQUIRE(whole);
  REQUIRE(areas.takeoff.surfaces.size() == whole->takeoff.surfaces.size());
  for (std::size_t i = 0; i < areas.takeoff.surfaces.size(); ++i)
    CHECK(areas.takeoff.surfaces[i].area == whole->takeoff.surfaces[i].area);
}

}  // namespace tackfree
