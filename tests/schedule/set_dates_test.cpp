#include "tackfree/schedule/set_dates.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using testing::instant;

namespace {

const Date saturday = date::year(2027) / 4 / 10;

/// Coat 2 of the sample's one batch, in UTC.
Operation second_coat() {
  Operation coat;
  coat.kind = OperationKind::coat;
  coat.coat = 2;
  coat.side = Side::show;
  return coat;
}

solver::Rule rule_at(const Job& job, const Operation& operation, const char* begin) {
  return SetDates(job, operation).rule({instant(begin), instant(begin) + Minutes(30)});
}

}  // namespace

TEST_CASE("work of a batch without dates is not forbidden") {
  CHECK_FALSE(SetDates(testing::sample_job(), second_coat()).any());
}

TEST_CASE("nothing of a batch begins before it may, sanding and coats alike") {
  Job job = testing::sample_job();
  job.batches[0].rules.not_before = instant("2027-04-10T12:00Z");
  Operation sanding;
  sanding.kind = OperationKind::sand_bare;
  REQUIRE(SetDates(job, sanding).any());
  CHECK(rule_at(job, sanding, "2027-04-10T11:59Z") == rules::not_before);
  CHECK(rule_at(job, sanding, "2027-04-10T12:00Z") == solver::no_rule);
  CHECK(rule_at(job, second_coat(), "2027-04-10T11:59Z") == rules::not_before);
}

TEST_CASE("a coat that runs into a day without coating is forbidden, sanding is not") {
  Job job = testing::sample_job();
  job.batches[0].rules.no_coating_on = {saturday};
  CHECK(rule_at(job, second_coat(), "2027-04-09T23:45Z") == rules::no_coating);
  CHECK(rule_at(job, second_coat(), "2027-04-09T23:30Z") == solver::no_rule);
  CHECK(rule_at(job, second_coat(), "2027-04-11T00:00Z") == solver::no_rule);
  Operation sanding;
  sanding.kind = OperationKind::sand_bare;
  CHECK(rule_at(job, sanding, "2027-04-10T10:00Z") == solver::no_rule);
}

TEST_CASE("a pinned coat is put on within the hours of its day, other coats when they like") {
  Job job = testing::sample_job();
  Pin pin;
  pin.step = "finish";
  pin.coat = 2;
  pin.on = saturday;
  pin.between = {9 * 60, 12 * 60};
  job.batches[0].rules.pins = {pin};
  CHECK(rule_at(job, second_coat(), "2027-04-10T08:55Z") == rules::pinned);
  CHECK(rule_at(job, second_coat(), "2027-04-10T09:00Z") == solver::no_rule);
  CHECK(rule_at(job, second_coat(), "2027-04-10T11:30Z") == solver::no_rule);
  CHECK(rule_at(job, second_coat(), "2027-04-10T11:35Z") == rules::pinned);
  CHECK(rule_at(job, second_coat(), "2027-04-11T09:00Z") == rules::pinned);
  Operation third = second_coat();
  third.coat = 3;
  CHECK(rule_at(job, third, "2027-04-11T09:00Z") == solver::no_rule);
}
