#include "tackfree/logged/log_facts.hpp"

#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"

#include <algorithm>

#include "plan/planned_log.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

/// What is wrong with the lines that the plan leaves out.
Problems refused(std::vector<LogEntry> entries, const char* now) {
  Problems problems;
  for (const LeftOutLine& line : planned_log(std::move(entries), now).job.history.left_out)
    problems.insert(problems.end(), line.why.begin(), line.why.end());
  return problems;
}

const DatedStep& step(const Plan& plan, const std::string& key) {
  const auto found = std::ranges::find_if(plan.schedule.steps, [&](const DatedStep& s) {
    return plan.list.operations[s.operation].key == key;
  });
  REQUIRE(found != plan.schedule.steps.end());
  return *found;
}

// make_plan throws when its independent checker finds a rule broken, so what comes back kept them.
TEST_CASE("a coat in the log stands where it was put on, and drying runs on from there") {
  const Plan plan = planned_log({coat(1, back_1, "2027-04-06T19:33Z")}, "2027-04-06T20:00Z");
  const DatedStep& back = step(plan, back_1);
  CHECK(back.end() == instant("2027-04-06T19:33Z"));
  CHECK(plan.list.operations[back.operation].done->logged);
  const Instant handle = *back.reaches[index_of(Stage::handle)];
  const DatedStep& turned = step(plan, "top/finish/coat-1/both/turn-over");
  CHECK(turned.begin() >= handle);
  CHECK(turned.held.front().by == HeldBy::drying);
  CHECK(plan.air.covers().begin <= back.end());
}

TEST_CASE(
    "a coat of a year that was mistyped does not make the plan go through the air since then") {
  const Plan plan = planned_log({coat(1, back_1, "1970-01-01T00:00Z")}, "2027-04-06T20:00Z");
  CHECK(plan.air.covers().begin > instant("2025-04-01T00:00Z"));
  CHECK(plan.schedule.unplaced.empty());
}

TEST_CASE("what a logged step waited for is done too, and told apart from what was logged") {
  const Plan plan = planned_log({coat(1, back_1, "2027-04-06T19:33Z")}, "2027-04-06T20:00Z");
  int unlogged = 0;
  for (const Operation& op : plan.list.operations)
    if (op.kind == OperationKind::sand_bare) {
      REQUIRE(op.done);
      CHECK_FALSE(op.done->logged);
      CHECK(op.done->time.end <= instant("2027-04-06T19:33Z"));
      ++unlogged;
    }
  CHECK(unlogged > 2);
  CHECK(step(plan, "top/finish/coat-1/back/dust-off").end() == step(plan, back_1).begin());
}

TEST_CASE("a coat that the log leaves out went on before the coat over it, not before later work") {
  const std::string second = "top/finish/coat-2/both/coat";
  // The sanding waits for the first two coats too, which dry as one.
  const std::string sanding = "top/finish/coat-3/both/sand-p400";
  Job job = sample_job("shellac");
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = 3;
  job.history.entries = {coat(1, second, "2027-04-10T08:00Z"),
                         entry(2, LogKind::done, sanding, "2027-04-10T11:00Z")};
  for (LogEntry& line : job.history.entries) line.insisted = true;
  const Plan plan = planned_again(job, "2027-04-10T12:00Z");
  const DatedStep& below = step(plan, "top/finish/coat-1/both/coat");
  CHECK(below.end() <= step(plan, second).begin());
}

TEST_CASE("what a fault asks for is not done by work from before it was seen") {
  const std::string first = "top/finish/coat-1/both/coat";
  LogEntry sanded =
      entry(2, LogKind::done, "top/finish/coat-2/both/sand-p240", "2027-04-12T18:00Z");
  Job job = logged_job({coat(1, first, "2027-04-10T10:00Z"), sanded,
                        fault(3, first, "2027-04-12T19:00Z", Fault::fisheyes)});
  job.batches[0].sides = Sides::on_points;
  const Plan plan = planned_again(job, "2027-04-12T19:05Z");
  const DatedStep& again = step(plan, first + "-again");
  CHECK_FALSE(plan.list.operations[again.operation].done);
  CHECK(step(plan, "top/finish/coat-1/both/repair-fisheyes").begin() >= plan.now);
  const DatedStep& sanding = step(plan, "top/finish/coat-2/both/sand-p240-2");
  CHECK(sanding.begin() >= *again.reaches[index_of(Stage::sand)]);
  CHECK(step(plan, "top/finish/coat-2/both/coat").begin() >= sanding.end());
}

TEST_CASE("the past is the same whatever is planned after it, and later evenings leave it alone") {
  const std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:33Z")};
  const Plan monday = planned_log(log, "2027-04-06T20:00Z");
  const Plan later = planned_log(log, "2027-04-08T20:00Z");
  CHECK(step(monday, back_1).pieces == step(later, back_1).pieces);
  CHECK(step(monday, back_1).reaches == step(later, back_1).reaches);
}

TEST_CASE("lines that fit nothing in the job are all named, with their line") {
  LogEntry sanded = entry(4, LogKind::done, back_2, "2027-04-06T19:00Z");
  const Problems problems =
      refused({coat(1, "top/finish/coat-1/back/coatt", "2027-04-06T19:00Z"),
               coat(2, back_1, "2027-04-06T19:00Z"), coat(3, back_1, "2027-04-06T19:30Z"), sanded,
               coat(5, show_1, "2027-04-06T21:00Z")},
              "2027-04-06T20:00Z");
  REQUIRE(problems.size() == 4);
  CHECK(problems[0].line == 1);
  CHECK(problems[0].hint == "did you mean \"top/finish/coat-1/back/coat\"?");
  CHECK(problems[1].line == 3);
  CHECK(problems[2].key == "kind");
  CHECK(problems[3].key == "at");
  for (const Problem& problem : problems) CHECK(problem.file == "sample.log.jsonl");
}

TEST_CASE("work that ended before what it follows is refused") {
  const Problems problems =
      refused({coat(1, back_1, "2027-04-06T19:00Z"),
               entry(2, LogKind::done, "top/finish/coat-1/both/turn-over", "2027-04-06T18:00Z")},
              "2027-04-06T20:00Z");
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 2);
}

TEST_CASE("a last coat that is left out lets the one below be the last") {
  const Plan whole = planned_log({}, "2027-04-05T17:00Z");
  std::vector<LogEntry> log{coat(1, back_1, "2027-04-06T19:00Z")};
  const Plan plan =
      planned_log({entry(1, LogKind::skipped, "top/finish/coat-3/back/coat", "2027-04-05T16:00Z"),
                   entry(2, LogKind::skipped, "top/finish/coat-3/show/coat", "2027-04-05T16:00Z"),
                   coat(3, "top/finish/coat-2/show/coat", "2027-04-05T15:55Z")},
                  "2027-04-05T17:00Z");
  REQUIRE(plan.schedule.ready_at);
  CHECK(*plan.schedule.ready_at < *whole.schedule.ready_at);
}

TEST_CASE("what would have waited for a coat that is left out waits for the one below it") {
  Job job =
      logged_job({coat(1, "top/finish/coat-1/both/coat", "2027-04-10T10:00Z"),
                  coat(2, "top/finish/coat-2/both/coat", "2027-04-17T10:00Z"),
                  entry(3, LogKind::skipped, "top/finish/coat-3/both/coat", "2027-04-17T10:05Z")});
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = 4;
  const Plan four = planned_again(job, "2027-04-17T10:10Z");
  const DatedStep& below = step(four, "top/finish/coat-2/both/coat");
  const auto sanding = std::ranges::find_if(four.schedule.steps, [&](const DatedStep& s) {
    const Operation& op = four.list.operations[s.operation];
    return op.kind == OperationKind::sand_between && op.coat == 4;
  });
  REQUIRE(sanding != four.schedule.steps.end());
  CHECK(sanding->begin() >= *below.reaches[index_of(Stage::sand)]);
  job.systems[0].steps[0].coats = 3;
  job.data.labour.fit_hardware = sourced(minutes(30), Origin::practice);
  const Plan three = planned_again(job, "2027-04-17T10:10Z");
  const DatedStep& last = step(three, "top/finish/coat-2/both/coat");
  CHECK(step(three, "top/finish/coat-3/both/fit-hardware").begin() >=
        *last.reaches[index_of(Stage::hardware)]);
}

TEST_CASE("work does not begin before what it follows was done, however long it usually takes") {
  const std::string first = "top/finish/coat-1/both/coat";
  const std::string sanding = "top/finish/coat-2/both/sand-p240";
  LogEntry sanded = entry(2, LogKind::done, sanding, "2027-04-10T10:02Z");
  sanded.insisted = true;
  Job job = logged_job({coat(1, first, "2027-04-10T10:00Z"), sanded});
  job.batches[0].sides = Sides::on_points;
  // Sanded before the coat, the next one would come past its window.
  job.coatings[0].recoat_unsanded_within = sourced(hours(12), Origin::label);
  const Plan plan = planned_again(job, "2027-04-10T10:05Z");
  CHECK(step(plan, sanding).begin() == instant("2027-04-10T10:00Z"));
  CHECK(step(plan, sanding).end() == instant("2027-04-10T10:02Z"));
}

TEST_CASE("the facts of a log are taken once, and mark every list of the work alike") {
  Problems problems;
  const auto work =
      make_work_at_hand(
          logged_job({coat(1, back_1, "2027-04-06T19:33Z"), coat(2, back_1, "2027-04-06T19:50Z")}),
          instant("2027-04-06T20:00Z"), problems)
          .value();
  CHECK(work.facts.misfits.empty());
  REQUIRE(work.facts.work.size() == 1);
  CHECK(work.job.history.left_out.size() == 1);
  OperationList list = work.list;
  for (Operation& op : list.operations) op.done.reset();
  mark_done(list, work.facts);
  for (std::size_t i = 0; i < list.operations.size(); ++i)
    CHECK(list.operations[i].done.has_value() == work.list.operations[i].done.has_value());
}

TEST_CASE("sanding that the class asks for nowhere is listed once it is in the log") {
  Job job = logged_job(
      {entry(1, LogKind::done, "top/finish/coat-2/both/sand-p320", "2027-04-06T19:00Z")});
  CHECK(sanded_by_log(job) == KeyedCoats{{0, 0, 2}});
  CHECK(sanded_by_log(logged_job({coat(1, back_1, "2027-04-06T19:00Z")})).empty());
}

}  // namespace
}  // namespace tackfree
