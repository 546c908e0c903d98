#include "tackfree/shopping/left_over.hpp"

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

/// Two coats, of 0.2 L on 5 April and 0.3 L on 8 April; the brush keeps 0.02 L each time. At hand
/// are 0.25 L opened in March and 0.1 L opened in January; half a litre and a quarter are bought.
struct TwoCoats {
  Job job = small_job();
  OperationList list;
  Schedule schedule;
  ShoppingList shopping;
  std::vector<std::vector<ShelfTin>> on_shelf{
      {{litres(0.25), parse_date("2027-03-01")}, {litres(0.1), parse_date("2027-01-10")}}};

  TwoCoats() {
    job.coatings[0].tin_keeps.value = days(30);
    job.data.methods.at(0).kept_by_tool.value = litres(0.02);
    put_on("2027-04-05T18:00Z", litres(0.2));
    put_on("2027-04-08T18:00Z", litres(0.3));
    CoatingPurchase& varnish = shopping.coatings.emplace_back();
    varnish.sizes = {{"0.25 L", litres(0.25), {}}, {"0.5 L", litres(0.5), {}}};
    varnish.tins = {{1, 1}, litres(0.75), 0, false};
    varnish.on_shelf = litres(0.35);
    varnish.nine_in_ten = litres(0.7);
  }
  void put_on(const char* at, Volume liquid) {
    Operation coat;
    coat.coating = 0;
    coat.method = 0;
    coat.liquid = liquid;
    DatedStep step;
    step.operation = list.operations.size();
    step.pieces = {{*parse_instant(at), *parse_instant(at) + Minutes(30)}};
    Session session;
    session.steps = {schedule.steps.size()};
    list.operations.push_back(coat);
    schedule.steps.push_back(step);
    schedule.sessions.push_back(session);
  }
  CoatingLeft left() const {
    return left_over(job, on_shelf, list, schedule, shopping).coatings.at(0);
  }
};

std::string day(const std::optional<Date>& on) { return on ? iso_date(*on) : "none"; }

}  // namespace

// By hand: 5 April takes 0.22 L: 0.1 of January's tin and 0.12 of March's, which has 0.13 left.
// 8 April takes 0.32 L: those 0.13, then 0.19 of the half litre, opened that day: 0.31 is left.
TEST_CASE("the worked job leaves 0.31 L, open since its second coat, and a quarter not opened") {
  const CoatingLeft left = TwoCoats().left();
  REQUIRE(left.tins.size() == 2);
  CHECK(left.tins[0].left.in(litres) == Approx(0.31));
  CHECK(day(left.tins[0].opened_on) == "2027-04-08");
  CHECK(day(left.tins[0].keeps_until) == "2027-05-08");
  CHECK(left.tins[1].left.in(litres) == Approx(0.25));
  CHECK(left.tins[1].full);
  CHECK_FALSE(left.tins[0].full);
  CHECK(day(left.tins[1].opened_on) == "none");
  CHECK(day(left.tins[1].keeps_until) == "none");
  CHECK(left.expected.in(litres) == Approx(0.56));
  CHECK(left.nine_in_ten.in(litres) == Approx(0.35 + 0.75 - 0.7));
}

TEST_CASE("a tin past its time is not used, and told apart") {
  TwoCoats job;
  job.shopping.coatings[0].too_old = {job.on_shelf[0][1]};
  job.shopping.coatings[0].on_shelf = litres(0.25);
  const CoatingLeft left = job.left();
  REQUIRE(left.tins.size() == 3);
  CHECK(left.expected.in(litres) == Approx(0.46));
  CHECK(left.tins[2].too_old);
  CHECK(left.tins[2].left == litres(0.1));
  CHECK(day(left.tins[2].keeps_until) == "2027-02-09");
}

TEST_CASE("a coat without a time is taken last, out of a tin that has no day of opening") {
  TwoCoats job;
  Operation coat = job.list.operations[0];
  coat.liquid = litres(0.3);
  job.list.operations.push_back(coat);
  job.schedule.unplaced.emplace_back().operation = 2;
  const CoatingLeft left = job.left();
  REQUIRE(left.tins.size() == 1);
  CHECK(left.tins[0].left.in(litres) == Approx(0.24));
  CHECK_FALSE(left.tins[0].full);
  CHECK(day(left.tins[0].opened_on) == "none");
}

TEST_CASE("a tool that is cleaned in a pause takes as much again; one that is wrapped does not") {
  TwoCoats job;
  job.schedule.tool_rests = {{.dated_step = 0, .wrapped = true}};
  CHECK(job.left().expected.in(litres) == Approx(0.56));
  job.schedule.tool_rests[0].wrapped = false;
  CHECK(job.left().expected.in(litres) == Approx(0.54));
}

TEST_CASE("each kind of waste is told once, with all coatings that make it") {
  TwoCoats job;
  job.job.coatings.push_back(job.job.coatings[0]);
  job.job.coatings[0].words.disposal = {"wash", "remains"};
  job.job.coatings[1].words.disposal = {"wash"};
  job.job.data.texts.disposal = {{.key = "remains"}, {.key = "wash"}};
  job.shopping.coatings.emplace_back().coating = 1;
  job.on_shelf.emplace_back();
  const auto waste = left_over(job.job, job.on_shelf, job.list, job.schedule, job.shopping).waste;
  REQUIRE(waste.size() == 2);
  CHECK(waste[0].text.key == "wash");
  CHECK(waste[0].coatings == std::vector<std::size_t>{0, 1});
  CHECK(waste[1].coatings == std::vector<std::size_t>{0});
}

TEST_CASE("of a thinner what was not used is clean, and what washed tools is dirty") {
  TwoCoats job;
  ThinnerPurchase& spirits = job.shopping.thinners.emplace_back();
  spirits.liquid = "mineral spirits";
  spirits.left_over = litres(0.4);
  spirits.to_clean = litres(0.3);
  const auto left = left_over(job.job, job.on_shelf, job.list, job.schedule, job.shopping);
  REQUIRE(left.thinners.size() == 1);
  CHECK(left.thinners[0].expected == litres(0.4));
  CHECK(left.thinners[0].used == litres(0.3));
}
