#include "tackfree/plan/stock.hpp"

#include "tackfree/logged/log_facts.hpp"
#include "tackfree/plan/make_plan.hpp"
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

LogEntry all_bought(int id, const std::vector<BoughtTins>& tins) {
  LogEntry line = entry(id, LogKind::bought, "", "2027-04-06T12:00Z");
  line.bought = tins;
  return line;
}

TEST_CASE("what the plan says to buy is bought, and does not come back") {
  const auto planned = [](std::vector<LogEntry> entries) {
    Problems problems;
    auto plan = make_plan(logged_job(std::move(entries)), instant("2027-04-06T19:30Z"), problems);
    REQUIRE(plan);
    return std::move(*plan);
  };
  const Plan before = planned({});
  const std::vector<BoughtTins> tins = tins_to_buy(before.job, before.shopping);
  REQUIRE(tins.size() >= 2);
  CHECK_FALSE(tins.front().thinner);
  CHECK(tins.back().thinner);
  const Plan after = planned({all_bought(1, tins)});
  CHECK(tins_to_buy(after.job, after.shopping).empty());
  const Plan begun = planned({all_bought(1, tins), coat(2, back_1, "2027-04-06T19:00Z")});
  CHECK(tins_to_buy(begun.job, begun.shopping).empty());
  // Tin by tin as much is left as on the whole; what is on is not taken twice.
  for (const Plan* plan : {&before, &after, &begun}) {
    REQUIRE(plan->left_over.coatings.size() == 1);
    CHECK(plan->left_over.coatings[0].expected.in(litres) ==
          Approx(plan->shopping.coatings.at(0).left_over.in(litres)));
  }
}

TEST_CASE("a thinner that was bought is at hand, less what thinned and cleaned") {
  LogEntry spirits = tin(1, TinEvent::bought, 1.0);
  spirits.coating.clear();
  spirits.thinner = "mineral spirits";
  const auto at_hand = [&](std::vector<LogEntry> entries) {
    const WorkAtHand plan = stocked(std::move(entries), {1.0});
    Volume sum;
    for (const Thinner& thinner : thinners_left(plan.job, plan.list))
      if (thinner.name == "mineral spirits")
        for (const ShelfTin& tin : thinner.on_shelf) sum += tin.volume;
    return sum.in(litres);
  };
  CHECK(at_hand({}) == 0.0);
  CHECK(at_hand({spirits}) == Approx(1.0));
  const WorkAtHand plan = stocked({coat(2, back_1, "2027-04-06T19:00Z")}, {1.0});
  const double thinned = operation_called(plan.list, back_1)->thinner.in(litres);
  const double cleaned = plan.job.data.shop.cleaner_per_session.value.in(litres);
  CHECK(at_hand({spirits, coat(2, back_1, "2027-04-06T19:00Z")}) ==
        Approx(1.0 - thinned - cleaned));
  // One that is opened is one of those bought.
  LogEntry opened = spirits;
  opened.id = opened.line = 3;
  opened.tin = TinEvent::opened;
  CHECK(at_hand({spirits, opened}) == Approx(1.0));
  CHECK(at_hand({opened}) == Approx(1.0));
}

}  // namespace
}  // namespace tackfree
