#include "tackfree/schedule/work_sessions.hpp"

#include <algorithm>
#include <set>

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::instant;
using testing::sample_job;
using testing::scheduled;

/// One batch, sanded with two grits by hand, then dusted off and coated.
struct Written {
  OperationList list;
  Schedule schedule;

  void add(OperationKind kind, std::vector<Interval> pieces, std::vector<std::size_t> by = {}) {
    Operation work;
    work.kind = kind;
    if (kind == OperationKind::sand_bare) work.grit = Grit{120};
    list.operations.push_back(work);
    DatedStep step;
    step.operation = list.operations.size() - 1;
    step.pieces = std::move(pieces);
    step.by = std::move(by);
    schedule.steps.push_back(step);
  }
  std::vector<WorkSession> sessions(const SessionChoice& choice = {}) const {
    return work_sessions(list, schedule, choice);
  }
};

Interval span(const char* begin, const char* end) { return {instant(begin), instant(end)}; }

TEST_CASE("a pause of an hour is within a session, a longer one ends it") {
  Written plan;
  plan.add(OperationKind::raise_grain, {span("2027-04-05T08:00Z", "2027-04-05T09:00Z")});
  plan.add(OperationKind::turn_over, {span("2027-04-05T10:00Z", "2027-04-05T10:10Z")});
  CHECK(plan.sessions().size() == 1);
  CHECK(plan.sessions().front().time == span("2027-04-05T08:00Z", "2027-04-05T10:10Z"));
  plan.schedule.steps.back().pieces = {span("2027-04-05T10:01Z", "2027-04-05T10:10Z")};
  CHECK(plan.sessions().size() == 2);
}

TEST_CASE("the grits of a sanding and the halves of a step are one task") {
  Written plan;
  plan.add(OperationKind::sand_bare, {span("2027-04-05T08:00Z", "2027-04-05T08:20Z")});
  plan.add(OperationKind::sand_bare, {span("2027-04-05T08:20Z", "2027-04-05T08:40Z"),
                                      span("2027-04-05T09:20Z", "2027-04-05T09:30Z")});
  const auto sessions = plan.sessions();
  REQUIRE(sessions.size() == 1);
  REQUIRE(sessions[0].tasks.size() == 1);
  const WorkTask& task = sessions[0].tasks[0];
  CHECK(task.steps == std::vector<std::size_t>{0, 1});
  CHECK(task.work == Minutes(50));
  CHECK(task.time == span("2027-04-05T08:00Z", "2027-04-05T09:30Z"));
}

TEST_CASE("a coat is one task with its own dusting off, and another batch is another task") {
  Written plan;
  plan.add(OperationKind::dust_off, {span("2027-04-05T08:00Z", "2027-04-05T08:05Z")});
  plan.add(OperationKind::coat, {span("2027-04-05T08:05Z", "2027-04-05T08:20Z")});
  plan.add(OperationKind::coat, {span("2027-04-05T08:20Z", "2027-04-05T08:30Z")});
  plan.list.operations.back().batch = 1;
  const auto tasks = plan.sessions().front().tasks;
  REQUIRE(tasks.size() == 2);
  CHECK(tasks[0].kind == KindOfWork(OperationKind::coat));
  CHECK(tasks[0].steps.size() == 2);
  plan.list.operations[1].coat = 2;
  CHECK(plan.sessions().front().tasks.size() == 3);
}

TEST_CASE("two people share a session, and each has a session of their own") {
  Written plan;
  plan.add(OperationKind::sand_bare, {span("2027-04-05T08:00Z", "2027-04-05T12:00Z")}, {1});
  plan.add(OperationKind::turn_over, {span("2027-04-05T09:00Z", "2027-04-05T09:10Z")}, {0});
  plan.add(OperationKind::turn_over, {span("2027-04-05T12:30Z", "2027-04-05T12:40Z")}, {0});
  const auto all = plan.sessions();
  REQUIRE(all.size() == 1);
  CHECK(all[0].people == std::vector<std::size_t>{0, 1});
  CHECK(all[0].time == span("2027-04-05T08:00Z", "2027-04-05T12:40Z"));
  const auto own = plan.sessions({.who = 0});
  REQUIRE(own.size() == 2);
  CHECK(own[0].time == span("2027-04-05T09:00Z", "2027-04-05T09:10Z"));
  CHECK(own[0].people == std::vector<std::size_t>{0});
}

TEST_CASE("work that is done is there only when it is asked for, skipped work never") {
  Written plan;
  plan.add(OperationKind::sand_bare, {span("2027-04-05T08:00Z", "2027-04-05T09:00Z")});
  plan.list.operations[0].done = Done{.time = plan.schedule.steps[0].pieces[0]};
  CHECK(plan.sessions().empty());
  CHECK(plan.sessions({.who = {}, .with_done = true}).size() == 1);
  plan.list.operations[0].done->skipped = true;
  CHECK(plan.sessions({.who = {}, .with_done = true}).empty());
}

TEST_CASE("all work of a schedule is in one session each, with its set-up and clean-up") {
  const auto s = scheduled(sample_job());
  Minutes work{0};
  Instant free_until;
  for (const WorkSession& session : work_sessions(s.list, s.schedule)) {
    if (free_until != Instant()) CHECK(session.time.begin > free_until + longest_pause);
    free_until = session.time.end;
    for (const WorkTask& task : session.tasks) {
      work += task.work;
      CHECK(task.time.begin >= session.time.begin);
      CHECK(task.time.end <= session.time.end);
    }
  }
  CHECK(work == attended_work(s.list, s.schedule, s.job.calendar.zone).in_all);
}

}  // namespace
}  // namespace tackfree
