#include "tackfree/schedule/crew.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// Ada from eight to twelve on Mondays, Ben from ten to two.
Job two_people() {
  Job job = testing::sample_job();
  WorkCalendar hours;
  hours.weekly[0] = {{8 * 60, 12 * 60}};
  job.people.push_back({"Ada", hours, 0});
  hours.weekly[0] = {{10 * 60, 14 * 60}};
  job.people.push_back({"Ben", hours, 0});
  return job;
}

const Interval monday{testing::instant("2027-04-05T00:00Z"), testing::instant("2027-04-06T00:00Z")};

TEST_CASE("a presence ends when anybody comes or goes, and anybody's hours are joined") {
  const auto there = presences(two_people(), monday);
  REQUIRE(there.size() == 3);
  CHECK(there[0].people == std::vector<std::size_t>{0});
  CHECK(there[1].people == std::vector<std::size_t>{0, 1});
  CHECK(iso_utc(there[1].stretch.begin) == "2027-04-05T10:00:00Z");
  CHECK(iso_utc(there[1].stretch.end) == "2027-04-05T12:00:00Z");
  CHECK(there[2].people == std::vector<std::size_t>{1});
  const auto joined = anybodys_hours(two_people(), monday);
  REQUIRE(joined.size() == 1);
  CHECK(joined[0].length() == Minutes(6 * 60));
}

/// A schedule of the first steps of the job, at these times of Monday.
Schedule at_times(const std::vector<std::vector<std::pair<int, int>>>& steps) {
  Schedule schedule;
  schedule.span = monday;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    DatedStep step;
    step.operation = i;
    for (const auto& [begin, end] : steps[i])
      step.pieces.push_back({monday.begin + Minutes(begin), monday.begin + Minutes(end)});
    schedule.steps.push_back(step);
  }
  return schedule;
}

OperationList sandings(std::size_t count) {
  OperationList list;
  list.operations.resize(count);
  for (std::size_t i = 0; i < count; ++i) list.operations[i].batch = i % 2;
  return list;
}

TEST_CASE("work at once is done by two, and a batch stays with whoever had it when he is free") {
  Schedule schedule = at_times({{{600, 630}}, {{600, 630}}, {{630, 660}}, {{630, 660}}});
  assign_people(two_people(), sandings(4), schedule);
  CHECK(schedule.steps[0].by != schedule.steps[1].by);
  CHECK(schedule.steps[2].by == schedule.steps[0].by);
  CHECK(schedule.steps[3].by == schedule.steps[1].by);
}

TEST_CASE("sanding is handed over when somebody leaves, and is one piece where the same goes on") {
  Schedule schedule = at_times({{{11 * 60, 13 * 60}}});
  assign_people(two_people(), sandings(1), schedule);
  REQUIRE(schedule.steps[0].pieces.size() == 2);
  CHECK(schedule.steps[0].by == std::vector<std::size_t>{0, 1});
  Schedule early = at_times({{{9 * 60, 11 * 60}}});
  assign_people(two_people(), sandings(1), early);
  CHECK(early.steps[0].pieces.size() == 1);
}

TEST_CASE("more work at once than people, or work in nobody's hours, is a fault of the schedule") {
  Schedule three = at_times({{{600, 630}}, {{600, 630}}, {{600, 630}}});
  CHECK_THROWS(assign_people(two_people(), sandings(3), three));
  Schedule night = at_times({{{60, 90}}});
  CHECK_THROWS(assign_people(two_people(), sandings(1), night));
}

TEST_CASE("of one person nothing is said") {
  Schedule schedule = at_times({{{60, 90}}});
  assign_people(testing::sample_job(), sandings(1), schedule);
  CHECK(schedule.steps[0].by.empty());
}

}  // namespace
}  // namespace tackfree
