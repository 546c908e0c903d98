#include "tackfree/operations/finishing_touch.hpp"

#include "tackfree/operations/operation_list.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

OperationList list_after(const std::string& after, Sides sides = Sides::turn_over) {
  Job job = testing::sample_job();
  job.systems[0].after = after;
  job.batches[0].sides = sides;
  const SurfaceTakeoff takeoff = take_off(job);
  return operation_list(job, takeoff, job_volumes(job, takeoff, {1.0}));
}

TEST_CASE("a finish is rubbed out on its show side once every last coat has cured") {
  const OperationList list = list_after("rub_out");
  const Operation& op = list.operations.back();
  CHECK(op.key == "top/finish/coat-3/both/rub-out");
  CHECK(op.kind == OperationKind::finishing_touch);
  REQUIRE(op.waits.size() == 2);
  for (const Wait& wait : op.waits) {
    CHECK(wait.stage == Stage::full_cure);
    CHECK(list.operations[wait.operation].coat == 3);
  }
  const Operation& show = list.operations[op.waits.back().operation];
  CHECK(show.side == Side::show);
  CHECK(op.area == show.area);
  CHECK(op.work.in(hours) == doctest::Approx(show.area.in(square_metres) / 1.5));
  CHECK(op.how.size() == 3);
}

TEST_CASE("coated at once, all of it is waxed; a system that asks for nothing gets nothing") {
  const OperationList list = list_after("wax", Sides::on_points);
  CHECK(list.operations.back().area.in(square_metres) == doctest::Approx(2.304));
  CHECK(list.operations.back().waits.size() == 1);
  CHECK(list_after("").operations.back().kind == OperationKind::fit_hardware);
}

}  // namespace
}  // namespace tackfree
