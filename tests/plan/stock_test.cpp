#include "tackfree/plan/stock.hpp"

#include "tackfree/plan/log_facts.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"

#include "logged_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;
using doctest::Approx;

WorkAtHand stocked(std::vector<LogEntry> entries, const std::vector<double>& shelf) {
  Job job = logged_job(std::move(entries));
  for (const double tin : shelf) job.coatings[0].on_shelf.push_back({litres(tin), {}});
  Problems problems;
  auto plan = make_work_at_hand(std::move(job), instant("2027-04-08T20:00Z"), problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(plan);
  return std::move(*plan);
}

double left(const WorkAtHand& plan) {
  Volume sum;
  const auto tins = tins_left(plan.job, plan.list);
  for (const ShelfTin& tin : tins.at(0)) sum += tin.volume;
  return sum.in(litres);
}

LogEntry tin(int id, TinEvent event, double size) {
  LogEntry line = entry(id, LogKind::tin, "", "2027-04-06T12:00Z");
  line.tin = event;
  line.coating = "finish";
  line.amount = litres(size);
  return line;
}

TEST_CASE("with nothing done the shelf is as the job has it, and all coats are to come") {
  const WorkAtHand plan = stocked({}, {1.0, 0.25});
  CHECK(left(plan) == Approx(1.25));
  CHECK(volumes_to_come(plan.volumes, plan.list).coats.size() == plan.volumes.coats.size());
}

TEST_CASE("a coat takes its litres, coating alone, and the brush keeps some once a day") {
  const WorkAtHand plan = stocked({coat(1, back_1, "2027-04-06T19:00Z", 0.11)}, {1.0});
  const Operation* op = operation_called(plan.list, back_1);
  const double coating_share = op->liquid / op->mixed;
  const double brush = plan.job.data.methods.at(*op->method).kept_by_tool.value.in(litres);
  CHECK(brush > 0);
  CHECK(left(plan) == Approx(1.0 - 0.11 * coating_share - brush));
  CHECK(volumes_to_come(plan.volumes, plan.list).coats.size() == plan.volumes.coats.size() - 1);
  CHECK(volumes_to_come(plan.volumes, plan.list).coatings[0].expected <
        plan.volumes.coatings[0].expected);
}

TEST_CASE("a tin bought adds to the shelf; one opened is one of the shelf, or else one more") {
  CHECK(left(stocked({tin(1, TinEvent::bought, 0.5)}, {1.0})) == Approx(1.5));
  const WorkAtHand opened = stocked({tin(1, TinEvent::opened, 1.0)}, {1.0});
  CHECK(left(opened) == Approx(1.0));
  CHECK(tins_left(opened.job, opened.list).at(0).at(0).opened_on);
  CHECK(left(stocked({tin(1, TinEvent::opened, 0.5)}, {1.0})) == Approx(1.5));
}

TEST_CASE("what was thrown away is gone, and what was taken but never had is short") {
  LogEntry waste = tin(1, TinEvent::opened, 0.2);
  waste.kind = LogKind::waste;
  waste.tin.reset();
  CHECK(left(stocked({waste}, {1.0})) == Approx(0.8));
  const WorkAtHand plan = stocked({waste}, {});
  CHECK(tins_short(plan.job, plan.list).at(0).in(litres) == Approx(0.2));
  CHECK(left(plan) == 0.0);
}

}  // namespace
}  // namespace tackfree
