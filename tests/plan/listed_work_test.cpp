#include "tackfree/plan/listed_work.hpp"

#include "tackfree/plan/make_work_at_hand.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("the coats that are held to a window are marked in the list, no others") {
  Problems problems;
  auto work =
      make_work_at_hand(testing::sample_job(), testing::instant("2027-04-05T17:00Z"), problems)
          .value();
  work.in_window[{0, 0, 2}] = hours(3);
  for (const Operation& op : listed_work(work).operations) {
    CHECK(op.window_to_spare.has_value() == (op.coating && op.coat == 2));
    if (op.window_to_spare) CHECK(*op.window_to_spare == hours(3));
  }
}

}  // namespace tackfree
