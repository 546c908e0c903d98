// What an operation list makes of one class over another.
#include "tackfree/operations/coats_below.hpp"
#include "tackfree/operations/operation_list.hpp"

#include <algorithm>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

/// The sample job with one coat of each class, in order.
OperationList list_of(const std::vector<std::string>& classes) {
  const Job job = testing::layers(classes);
  const SurfaceTakeoff takeoff = take_off(job);
  return operation_list(job, takeoff,
                        job_volumes(job, takeoff, std::vector<double>(job.coatings.size(), 1.0)));
}

/// The longest that any work waits for a pair of classes.
Duration waited_for(const OperationList& list) {
  Duration longest;
  for (const Operation& op : list.operations)
    for (const Wait& wait : op.waits)
      longest = std::max(longest, wait.dry_for.value_or(Duration()));
  return longest;
}

TEST_CASE("a pair without a rule waits until the coat below is hard, one of a kind does not") {
  CHECK(waited_for(list_of({"nitrocellulose_lacquer", "conversion_varnish"})) == hours(72));
  const Job job = testing::sample_job();
  const auto hard = pair_wait(job.data, testing::class_of(job.data, "conversion_varnish"),
                              testing::class_of(job.data, "shellac"));
  CHECK(hard.value().origin == Origin::assumed);
  const Coating varnish = testing::class_of(job.data, "oil_polyurethane");
  CHECK_FALSE(pair_wait(job.data, varnish, varnish));
}

TEST_CASE("a coat waits for a pair's hours itself where the sanding for it was done sooner") {
  const Job job = testing::layers({"nitrocellulose_lacquer", "conversion_varnish"});
  OperationList list = list_of({"nitrocellulose_lacquer", "conversion_varnish"});
  const auto coat = std::ranges::find_if(
      list.operations, [](const Operation& op) { return op.coating && *op.coating == 1; });
  REQUIRE(coat != list.operations.end());
  for (auto op = list.operations.begin(); op != coat; ++op)
    if (op->kind != OperationKind::dust_off || op + 1 != coat) op->done = Done{};
  const auto waits_72_h = [&] {
    return std::ranges::any_of(coat->waits,
                               [](const Wait& wait) { return wait.dry_for == hours(72); });
  };
  CHECK_FALSE(waits_72_h());
  wait_for_coats_below(list, job);
  CHECK(waits_72_h());
}

TEST_CASE("one coat over stain is scuffed by hand with the finest grit, a second one is sanded") {
  const auto before_last = [](const std::vector<std::string>& classes) {
    const OperationList list = list_of(classes);
    const auto sanding =
        std::ranges::find(list.operations, OperationKind::sand_between, &Operation::kind);
    REQUIRE(sanding != list.operations.end());
    return *sanding;
  };
  const Operation barrier = before_last({"oil_stain", "shellac", "waterborne_polyurethane"});
  CHECK(barrier.scuffed);
  CHECK(barrier.grit->p == 400);
  REQUIRE_FALSE(barrier.how.empty());
  CHECK(barrier.how[0].find("By hand only") == 0);
  const Operation plain = before_last({"shellac", "waterborne_polyurethane"});
  CHECK_FALSE(plain.scuffed);
  CHECK(plain.grit->p == 320);
}

}  // namespace
}  // namespace tackfree
