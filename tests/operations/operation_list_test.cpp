#include "tackfree/operations/operation_list.hpp"

#include "tackfree/takeoff/lots.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "sample_job.hpp"
#include <doctest/doctest.h>
#include <fmt/format.h>

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
            "top/finish/bare/both/sand-p120",   "top/finish/bare/both/sand-p150",
            "top/finish/bare/both/sand-p180",   "top/finish/bare/both/sand-p220",
            "top/finish/coat-1/back/dust-off",  "top/finish/coat-1/back/coat",
            "top/finish/coat-1/both/turn-over", "top/finish/coat-1/show/dust-off",
            "top/finish/coat-1/show/coat",      "top/finish/coat-2/both/sand-p240",
            "top/finish/coat-2/back/turn-back", "top/finish/coat-2/back/dust-off",
            "top/finish/coat-2/back/coat",      "top/finish/coat-2/both/turn-over",
            "top/finish/coat-2/show/dust-off",  "top/finish/coat-2/show/coat",
            "top/finish/coat-3/both/sand-p320", "top/finish/coat-3/back/turn-back",
            "top/finish/coat-3/back/dust-off",  "top/finish/coat-3/back/coat",
            "top/finish/coat-3/both/turn-over", "top/finish/coat-3/show/dust-off",
            "top/finish/coat-3/show/coat",      "top/finish/coat-3/both/fit-hardware"});
  const Operation& turn = at(list, "top/finish/coat-1/both/turn-over");
  CHECK(waits_for(list, turn, "top/finish/coat-1/back/coat", Stage::handle));
  const Operation& sand = at(list, "top/finish/coat-2/both/sand-p240");
  CHECK(waits_for(list, sand, "top/finish/coat-1/back/coat", Stage::sand));
  CHECK(waits_for(list, sand, "top/finish/coat-1/show/coat", Stage::sand));
}

TEST_CASE("a batch without hardware has none to fit, and no date for it") {
  Job job = testing::sample_job();
  job.batches[0].hardware = false;
  const OperationList list = list_of(job);
  for (const Operation& op : list.operations) CHECK(op.kind != OperationKind::fit_hardware);
  for (const Outcome& outcome : list.outcomes) CHECK(outcome.stage != Stage::hardware);
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
  CHECK(sand.kind == OperationKind::sand_raised);
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
  CHECK(at(list, "top/finish/bare/both/sand-p120").area.in(square_metres) ==
        doctest::Approx(2.304));
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

const Operation* first_of(const OperationList& list, OperationKind kind) {
  for (const Operation& operation : list.operations)
    if (operation.kind == kind) return &operation;
  return nullptr;
}

TEST_CASE("oil comes off again in the same stretch, in portions that can be wiped in time") {
  Job job = testing::sample_job("drying_oil");
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].method = "wipe";
  // 2.304 m2 at 12 m2/h are 11.5 min, within the 30 - 10 min there are.
  OperationList list = list_of(job);
  const Operation& coat = at(list, "top/finish/coat-1/both/coat");
  const Operation& wipe = at(list, "top/finish/coat-1/both/wipe-off");
  CHECK(&wipe == &coat + 1);
  CHECK(coat.portions == 1);
  CHECK(*wipe.right_after == minutes(10));
  CHECK(wipe.work.in(minutes) == doctest::Approx(2.304 / 24 * 60));
  CHECK(coat.work.in(minutes) == doctest::Approx(2.304 / 12 * 60));
  CHECK(coat.how.size() == 3);
  // Five tops, 57.6 min, are three portions: two of them left and wiped within the coat itself.
  job.parts[0].quantity = 5;
  list = list_of(job);
  const Operation& large = at(list, "top/finish/coat-1/both/coat");
  CHECK(large.portions == 3);
  CHECK(large.work.in(minutes) == doctest::Approx(57.6 + 2 * (10 + 28.8 / 3)));
  CHECK(at(list, "top/finish/coat-1/both/wipe-off").work.in(minutes) == doctest::Approx(28.8 / 3));
}

TEST_CASE("lacquer is sanded after its first coat and before its last only (rule 4)") {
  Job job = testing::sample_job("nitrocellulose_lacquer");
  job.systems[0].steps[0].coats = 5;
  const auto all = keys(list_of(job));
  const auto sanded = [&](int coat) {
    return std::count_if(all.begin(), all.end(), [&](const std::string& key) {
      return key.find("coat-" + std::to_string(coat) + "/both/sand") != std::string::npos;
    });
  };
  CHECK(sanded(2) == 1);
  CHECK(sanded(3) == 0);
  CHECK(sanded(4) == 0);
  CHECK(sanded(5) == 1);
}

TEST_CASE("the fourth coat of what melts together waits for another day than the first (rule 4)") {
  Job job = testing::sample_job("shellac");
  job.systems[0].steps[0].coats = 5;
  const auto waits = [](const OperationList& list, const std::string& key) {
    const Operation& op = at(list, key);
    return std::count_if(op.waits.begin(), op.waits.end(), [&](const Wait& wait) {
      const Operation& before = list.operations[wait.operation];
      return wait.next_day && before.side == op.side && before.coat == op.coat - 3;
    });
  };
  const OperationList list = list_of(job);
  CHECK(waits(list, "top/finish/coat-3/show/coat") == 0);
  CHECK(waits(list, "top/finish/coat-4/show/coat") == 1);
  CHECK(waits(list, "top/finish/coat-4/back/coat") == 1);
  CHECK(waits(list, "top/finish/coat-5/show/coat") == 1);
  job.coatings[0].coats_a_day_max.reset();
  CHECK(waits(list_of(job), "top/finish/coat-4/show/coat") == 0);
}

TEST_CASE("coats that melt together dry as one: two and three of them delay the next (rule 4)") {
  Job job = testing::sample_job("shellac");
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = 5;
  const auto films = [](const OperationList& list, const std::string& key) {
    std::map<int, int> coat_of;  // by films, the coat they are counted from
    for (const Wait& wait : at(list, key).waits)
      if (wait.stage == Stage::sand) coat_of[wait.films] = list.operations[wait.operation].coat;
    return coat_of;
  };
  const OperationList list = list_of(job);
  CHECK(films(list, "top/finish/coat-2/both/sand-p320") == std::map<int, int>{{1, 1}});
  CHECK(films(list, "top/finish/coat-3/both/sand-p400") == std::map<int, int>{{1, 2}, {2, 1}});
  CHECK(films(list, "top/finish/coat-5/both/sand-p400") ==
        std::map<int, int>{{1, 4}, {2, 3}, {3, 2}});
  job.coatings[0].coats_a_day_max.reset();
  CHECK(films(list_of(job), "top/finish/coat-3/both/sand-p400") == std::map<int, int>{{1, 2}});
}

TEST_CASE("light use and cure count the whole film of coats that melt together (rule 4)") {
  Job job = testing::sample_job("nitrocellulose_lacquer");
  job.batches[0].sides = Sides::on_points;
  const auto whole = [&](int coats) {
    job.systems[0].steps[0].coats = coats;
    return at(list_of(job), "top/finish/coat-" + std::to_string(coats) + "/both/coat").whole_film;
  };
  // 100 um wet at 20 % are 20 um dry: half of the first, two or four more, less two sandings of 4
  // um; 45 um is the aim of normal wear.
  CHECK(whole(3) == doctest::Approx(1.0));
  CHECK(whole(5) == doctest::Approx((10.0 + 80 - 8) / 45));
  const OperationList list = list_of(job);
  CHECK(at(list, "top/finish/coat-4/both/coat").whole_film == 1.0);
  CHECK(at(list, "top/finish/coat-5/both/coat").film_for(Stage::recoat) == 1.0);
  job.coatings[0].coats_a_day_max.reset();
  CHECK(whole(5) == 1.0);
}

TEST_CASE("a batch that comes after another is coated when that one is dry to handle (rule 12)") {
  Job job = testing::sample_job();
  testing::add_legs(job);
  const auto waits = [](const OperationList& list) {
    return waits_for(list, at(list, "legs/finish/coat-1/both/coat"), "top/finish/coat-3/show/coat",
                     Stage::handle);
  };
  CHECK_FALSE(waits(list_of(job)));
  job.batches[1].after = "top";
  const OperationList list = list_of(job);
  CHECK(waits(list));
  CHECK(
      at(list, "legs/finish/bare/both/sand-p120").waits.empty());  // the wood may be sanded sooner
}

TEST_CASE("a coat that misses its window is sanded for although the tin asks for none (rule 2)") {
  Job job = testing::sample_job();
  job.coatings[0].needs_sanding_between = false;
  const SurfaceTakeoff takeoff = take_off(job);
  const JobVolumes volumes = job_volumes(job, takeoff, {1.0});
  const OperationList list = operation_list(job, takeoff, volumes, {{0, 0, 3}});
  const auto all = keys(list);
  CHECK(std::count(all.begin(), all.end(), "top/finish/coat-2/both/sand-p320") == 0);
  const Operation& sand = at(list, "top/finish/coat-3/both/sand-p320");
  CHECK(waits_for(list, sand, "top/finish/coat-2/show/coat", Stage::sand));
}

std::optional<Duration> pair_wait(const OperationList& list, const std::string& key) {
  for (const Wait& wait : at(list, key).waits)
    if (wait.dry_for) return wait.dry_for;
  return std::nullopt;
}

TEST_CASE(
    "stain is never sanded, and waterborne waits 72 h over it but not over shellac (rule 5)") {
  const OperationList list = list_of(testing::layers({"oil_stain", "waterborne_polyurethane"}));
  CHECK(first_of(list, OperationKind::sand_between) == nullptr);
  CHECK(pair_wait(list, "top/waterborne-polyurethane/coat-1/both/dust-off") == hours(72));
  CHECK(waits_for(list, at(list, "top/waterborne-polyurethane/coat-1/both/dust-off"),
                  "top/oil-stain/coat-1/both/coat", Stage::recoat));
  const OperationList barrier =
      list_of(testing::layers({"oil_stain", "shellac", "waterborne_polyurethane"}));
  for (const Operation& op : barrier.operations)
    for (const Wait& wait : op.waits) CHECK_FALSE(wait.dry_for);
  const OperationList oil = list_of(testing::layers({"oil_stain", "oil_polyurethane"}));
  CHECK_FALSE(pair_wait(oil, "top/oil-polyurethane/coat-1/both/dust-off"));
}

TEST_CASE("the first coat over another coating is dusted off before, sanded or not") {
  const OperationList list = list_of(testing::layers({"oil_stain", "oil_polyurethane"}));
  const auto all = keys(list);
  CHECK(std::count(all.begin(), all.end(), "top/oil-polyurethane/coat-1/both/dust-off") == 1);
}

TEST_CASE("pores are filled after the stain and before the clear coats, and sanded when hard") {
  Job job = testing::layers({"oil_stain", "oil_polyurethane"});
  CHECK(first_of(list_of(job), OperationKind::fill_pores) == nullptr);
  job.systems[0].steps[1].fill_pores = true;
  const OperationList list = list_of(job);
  const Operation& fill = at(list, "top/oil-polyurethane/coat-1/both/fill-pores");
  CHECK(waits_for(list, fill, "top/oil-stain/coat-1/both/coat", Stage::recoat));
  const Operation& sand = at(list, "top/oil-polyurethane/coat-1/both/sand-filler");
  REQUIRE(sand.waits.size() == 1);
  CHECK(sand.waits[0].delay == hours(24));
  CHECK(sand.grit == Grit{320});
  CHECK(waits_for(list, at(list, "top/oil-polyurethane/coat-1/both/dust-off"), sand.key,
                  std::nullopt));
}

TEST_CASE("no steel wool and no tack cloth under a waterborne coat (rule 8)") {
  for (const Advice& how : testing::sample_job().data.texts.how) {
    if (how.key.find("/waterborne") == std::string::npos) continue;
    for (const std::string& line : how.lines) {
      CAPTURE(line);
      for (const char* thing : {"steel wool", "tack cloth"}) {
        const std::size_t said = line.find(thing);
        if (said != std::string::npos) CHECK(line.substr(said - 3, 2).find_first_of("oO") == 1);
      }
    }
  }
  const Job job = testing::sample_job();
  for (const Coating& coating : job.data.classes)
    if (coating.raises_grain) CHECK(coating.words.wipe_with.find("water") != std::string::npos);
}

TEST_CASE("a batch with nothing to coat has no operations") {
  Job job = testing::sample_job();
  job.parts[0].coated = {};
  CHECK(list_of(job).operations.empty());
}

TEST_CASE("what comes after a batch in lots waits for the last coats of every lot") {
  Job job = testing::sample_job();
  testing::add_legs(job);
  job.parts[0].quantity = 5;
  job.rooms = {{"shed", square_metres(2.7), std::nullopt, 0}};
  job.batches[0].rules.room = 0;
  job.batches[1].after = "top";
  Problems problems;
  split_into_lots(job, problems);
  REQUIRE(job.batches.size() == 4);
  const OperationList list = list_of(job);
  const Operation& first = at(list, "legs/finish/coat-1/both/coat");
  for (const char* lot : {"top-lot-1", "top-lot-2", "top-lot-3"})
    for (const char* side : {"back", "show"})
      CHECK(waits_for(list, first, fmt::format("{}/finish/coat-3/{}/coat", lot, side),
                      Stage::handle));
}

}  // namespace
}  // namespace tackfree
