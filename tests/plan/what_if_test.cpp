#include "tackfree/plan/what_if.hpp"

#include "plan/planned_log.hpp"

namespace tackfree {
namespace {

const Instant what_if_now = testing::instant("2027-04-05T17:00Z");

Job at_celsius(double degrees) {
  Job job = testing::sample_job();
  job.air = ConstantAir{celsius(degrees), humidity_percent(50)};
  return job;
}

TEST_CASE("a change is added to what the job has, and the job itself stays") {
  Job job = at_celsius(6);
  job.people = {{.name = "one", .hours = job.calendar}};
  const AddedHours hours{parse_date("2027-04-06").value(), {{1290, 1320}}};
  const Job later = with_change(job, hours);
  REQUIRE(later.calendar.added.size() == 1);
  CHECK(later.people[0].hours.added.size() == 1);
  CHECK(job.calendar.added.empty());
  const Job warmer = with_change(with_change(job, ConditionedAir{.warmer = kelvins(2)}),
                                 ConditionedAir{.warmer = kelvins(3)});
  CHECK(std::get<AirMix>(warmer.air).conditioned.size() == 2);
  CHECK(std::get<ConstantAir>(job.air).temperature == celsius(6));
}

TEST_CASE("what if the cold room were warmer: the coats get times, and the whole a date") {
  const std::string coat = testing::back_1;
  solver::Effort effort;
  const auto cold =
      what_if(at_celsius(6), ConditionedAir{.warmer = kelvins(1)}, what_if_now, effort);
  REQUIRE(cold);
  CHECK_FALSE(cold->ready_at);
  CHECK_FALSE(cold->begins.contains(coat));
  const std::int64_t before = effort.left;
  const auto warm =
      what_if(at_celsius(6), ConditionedAir{.warmer = kelvins(14)}, what_if_now, effort);
  REQUIRE(warm);
  CHECK(warm->ready_at);
  CHECK(warm->begins.contains(coat));
  CHECK(effort.left < before);
}

}  // namespace
}  // namespace tackfree
