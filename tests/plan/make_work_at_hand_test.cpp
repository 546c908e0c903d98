#include "tackfree/plan/make_work_at_hand.hpp"

#include <utility>

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {

using testing::back_1;
using testing::coat;
using testing::instant;

TEST_CASE("the job stays as it was read; what log and lots make of it is the work's") {
  Job job = testing::logged_job({coat(1, back_1, "2027-04-06T19:00Z", 0.3),
                                 coat(2, "gone/coat-1/show/coat", "2027-04-06T19:00Z")});
  job.rooms = {{.name = "shed", .places = 1}};
  job.batches[0].rules.room = 0;
  job.parts[0].quantity = 2;
  const Job given = job;
  Problems problems;
  const auto work = make_work_at_hand(job, instant("2027-04-06T20:02Z"), problems);
  CHECK(job.batches.size() == given.batches.size());
  CHECK(job.history.entries.size() == 2);
  REQUIRE(work);
  CHECK(work->now == instant("2027-04-06T20:05Z"));
  CHECK(work->job.batches.size() == 2);
}

TEST_CASE("work whose log has a line that does not fit goes without that line") {
  Problems problems;
  const auto work = make_work_at_hand(
      testing::logged_job({coat(1, back_1, "2027-04-06T19:00Z", 0.3),
                           coat(2, "gone/coat-1/show/coat", "2027-04-06T19:00Z")}),
      instant("2027-04-06T20:00Z"), problems);
  REQUIRE(work);
  CHECK(problems.empty());
  CHECK(work->job.history.entries.size() == 1);
  CHECK(work->job.history.left_out.size() == 1);
  CHECK(work->lessons.coats.size() == 1);
  CHECK(work->thirst.at(0).readings + static_cast<int>(work->thirst.at(0).asked_of.size()) == 1);
}

}  // namespace tackfree
