#include "tackfree/operations/operation_list.hpp"

#include <algorithm>
#include <set>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

OperationList list_of(const Job& job) {
  const SurfaceTakeoff takeoff = take_off(job);
  return operation_list(job, takeoff,
                        job_volumes(job, takeoff, std::vector<double>(job.coatings.size(), 1.0)));
}

std::vector<std::string> keys(const OperationList& list) {
  std::vector<std::string> all;
  for (const Operation& operation : list.operations) all.push_back(operation.key);
  return all;
}

const Operation& at(const OperationList& list, const std::string& key) {
  for (const Operation& operation : list.operations)
    if (operation.key == key) return operation;
  throw std::runtime_error("no operation " + key);
}

bool waits_for(const OperationList& list, const Operation& operation, const std::string& key,
               std::optional<Stage> stage) {
  return std::any_of(operation.waits.begin(), operation.waits.end(), [&](const Wait& wait) {
    return list.operations[wait.operation].key == key && wait.stage == stage;
  });
}

TEST_CASE("a two-sided batch is coated back first, turned when dry to handle, show side last") {
  const OperationList list = list_of(testing::sample_job());
  CHECK(keys(list) ==
        std::vector<std::string>{
            "top/finish/bare/both/sand-p80",    "top/finish/bare/both/sand-p120",
            "top/finish/bare/both/sand-p150",   "top/finish/bare/both/sand-p180",
            "top/finish/bare/both/sand-p220",   "top/finish/coat-1/both/dust-off",
            "top/finish/coat-1/back/coat",      "top/finish/coat-1/both/turn-over",
            "top/finish/coat-1/show/coat",      "top/finish/coat-2/both/sand-p240",
            "top/finish/coat-2/both/dust-off",  "top/finish/coat-2/back/coat",
            "top/finish/coat-2/both/turn-over", "top/finish/coat-2/show/coat",
            "top/finish/coat-3/both/sand-p320", "top/finish/coat-3/both/dust-off",
            "top/finish/coat-3/back/coat",      "top/finish/coat-3/both/turn-over",
            "top/finish/coat-3/show/coat",      "top/finish/coat-3/both/fit-hardware"});
  const Operation& turn = at(list, "top/finish/coat-1/both/turn-over");
  CHECK(waits_for(list, turn, "top/finish/coat-1/back/coat", Stage::handle));
  const Operation& sand = at(list, "top/finish/coat-2/both/sand-p240");
  CHECK(waits_for(list, sand, "top/finish/coat-1/back/coat", Stage::sand));
  CHECK(waits_for(list, sand, "top/finish/coat-1/show/coat", Stage::sand));
}

TEST_CASE("no coat goes on until the sanding dust of its own batch has settled") {
  const Job job = testing::sample_job();
  const OperationList list = list_of(job);
  const Operation& coat = at(list, "top/finish/coat-2/back/coat");
  const bool settles = std::any_of(coat.waits.begin(), coat.waits.end(), [&](const Wait& wait) {
    return list.operations[wait.operation].kind == OperationKind::sand_between &&
           wait.delay == job.data.labour.dust_settles.value;
  });
  CHECK(settles);
}

TEST_CASE("on points both sides are one coat, and nothing is turned") {
  Job job = testing::sample_job();
  job.batches[0].sides = Sides::on_points;
  for (const Operation& operation : list_of(job).operations) {
    CHECK(operation.kind != OperationKind::turn_over);
    CHECK(operation.side == Side::both);
  }
}

TEST_CASE("waterborne finish raises the grain first: damped, dried three hours, sanded again") {
  const OperationList list = list_of(testing::sample_job("waterborne_polyurethane"));
  const Operation& damp = at(list, "top/finish/bare/both/damp");
  const Operation& sand = at(list, "top/finish/bare/both/sand-raised-p220");
  CHECK(damp.kind == OperationKind::raise_grain);
  REQUIRE(sand.waits.size() == 1);
  CHECK(sand.waits[0].delay == hours(3));
}

TEST_CASE("keys are unique and do not change when a batch is added before or behind") {
  Job job = testing::sample_job();
  const auto alone = keys(list_of(job));
  testing::add_legs(job);
  const auto both = keys(list_of(job));
  std::swap(job.batches[0], job.batches[1]);
  const auto swapped = keys(list_of(job));
  CHECK(std::set<std::string>(both.begin(), both.end()).size() == both.size());
  for (const std::string& key : alone) {
    CHECK(std::find(both.begin(), both.end(), key) != both.end());
    CHECK(std::find(swapped.begin(), swapped.end(), key) != swapped.end());
  }
}

TEST_CASE("times and sheets come from the areas and the labour rates") {
  Job job = testing::sample_job();
  const OperationList list = list_of(job);
  // One solid top: 2 x 1.08 + 2 x 0.054 + 2 x 0.018 = 2.304 m2; 6 m2/h; 1.5 m2 a disc.
  const Operation& sand = at(list, "top/finish/bare/both/sand-p120");
  CHECK(sand.area.in(square_metres) == doctest::Approx(2.304));
  CHECK(sand.work.in(minutes) == doctest::Approx(2.304 / 6 * 60));
  CHECK(sand.sheets == doctest::Approx(2.304 / 1.5));
  CHECK(sand.power_sanding);
  // Brush 8 m2/h on the back, 1.08 m2.
  CHECK(at(list, "top/finish/coat-1/back/coat").work.in(minutes) == doctest::Approx(1.08 / 8 * 60));
  job.data.labour.bare_tool = SandingTool::hand;
  const Operation by_hand = at(list_of(job), "top/finish/bare/both/sand-p120");
  CHECK_FALSE(by_hand.power_sanding);
  CHECK(by_hand.work.in(minutes) == doctest::Approx(2.304 / 2 * 60));
}

TEST_CASE("plywood in the batch is not sanded with the coarse grits") {
  Job job = testing::sample_job();
  Part panel = job.parts[0];
  panel.name = "panel";
  panel.material = Material::plywood;
  job.parts.push_back(panel);
  const OperationList list = list_of(job);
  CHECK(at(list, "top/finish/bare/both/sand-p80").area.in(square_metres) == doctest::Approx(2.304));
  CHECK(at(list, "top/finish/bare/both/sand-p150").area.in(square_metres) ==
        doctest::Approx(4.608));
}

TEST_CASE("without sanding between, the next coat waits until it may be recoated") {
  Job job = testing::sample_job();
  job.coatings[0].needs_sanding_between = false;
  const OperationList list = list_of(job);
  CHECK(waits_for(list, at(list, "top/finish/coat-2/back/coat"), "top/finish/coat-1/show/coat",
                  Stage::recoat));
}

TEST_CASE("every operation waits only for earlier ones and says how it is done") {
  Job job = testing::sample_job("shellac");
  testing::add_legs(job);
  const OperationList list = list_of(job);
  for (std::size_t i = 0; i < list.operations.size(); ++i) {
    CAPTURE(list.operations[i].key);
    for (const Wait& wait : list.operations[i].waits) CHECK(wait.operation < i);
    CHECK(list.operations[i].how.size() >= 2);
    CHECK(list.operations[i].how.size() <= 4);
  }
}

TEST_CASE("a batch with nothing to coat has no operations") {
  Job job = testing::sample_job();
  job.parts[0].coated = {};
  CHECK(list_of(job).operations.empty());
}

}  // namespace
}  // namespace tackfree
