#include "tackfree/plan/early_coats.hpp"

#include <algorithm>

#include "plan/early_job.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using namespace testing;

TEST_CASE("an early coat keeps its warning, and sanding that nobody did is not taken as done") {
  const Plan plan = planned_again(
      early_job("oil_polyurethane", {insisted_coat(both_2, instant("2027-04-06T20:30Z"))}),
      "2027-04-20T18:00Z");
  CHECK_FALSE(notes_of<EarlyCoatNote>(plan.notes).empty());
  CHECK_FALSE(notes_of<AdhesionNote>(plan.notes).empty());
  const Operation* second = nullptr;
  for (const Operation& op : plan.list.operations) {
    if (op.kind == OperationKind::sand_between && op.coat == 2) CHECK(op.skipped());
    if (op.key == both_2) second = &op;
  }
  REQUIRE(second);
  REQUIRE(second->done->counts_from);
  CHECK(*second->done->counts_from > second->done->time.end);
  CHECK(second->done->films_wet > 1.5);
  CHECK(second->done->films_wet <= 2);
}

TEST_CASE("sanding that the log leaves out is a warning that stays") {
  const Job job = early_job(
      "oil_polyurethane",
      {entry(2, LogKind::skipped, "top/finish/coat-2/both/sand-p240", "2027-04-08T18:00Z")});
  const Plan plan = planned_again(job, "2027-04-08T18:05Z");
  const auto told = notes_of<AdhesionNote>(plan.notes);
  REQUIRE_FALSE(told.empty());
  CHECK(told[0].cause == AdhesionNote::Cause::left_out);
}

}  // namespace
}  // namespace tackfree
