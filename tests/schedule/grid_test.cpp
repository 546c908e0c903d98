#include "tackfree/schedule/grid.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("waits and starts are rounded up to the grid, ends down") {
  const Grid grid{{testing::instant("2027-04-05T17:00Z"), testing::instant("2027-04-06T17:00Z")},
                  Minutes(5)};
  CHECK(grid.slots() == 288);
  CHECK(grid.slot_up(testing::instant("2027-04-05T17:01Z")) == 1);
  CHECK(grid.slot_down(testing::instant("2027-04-05T17:09Z")) == 1);
  CHECK(grid.slot_up(testing::instant("2027-04-05T16:58Z")) == 0);
  CHECK(grid.slot_down(testing::instant("2027-04-05T16:58Z")) == -1);
  CHECK(grid.slots_up(minutes(10)) == 2);
  CHECK(grid.slots_up(minutes(10.5)) == 3);
  CHECK(grid.slots_up(minutes(0)) == 0);
  CHECK(grid.at(3) == testing::instant("2027-04-05T17:15Z"));
}
