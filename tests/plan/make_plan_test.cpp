#include "tackfree/plan/make_plan.hpp"

#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/job_reader.hpp"
#include "tackfree/plan/dated_work.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>
#include <variant>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::instant;
using testing::sample_job;

constexpr std::array demos{"hall_bench/hall_bench.json", "wall_shelves/wall_shelves.json",
                           "cabinet_fronts/cabinet_fronts.json"};

Plan plan_of(Job job, const char* now = "2027-04-05T17:00Z") {
  Problems problems;
  auto plan = make_plan(std::move(job), instant(now), problems);
  REQUIRE(problems.empty());
  return std::move(*plan);
}

TEST_CASE("a plan starts on its grid and holds every stage's answer") {
  const Plan plan = plan_of(sample_job(), "2027-04-05T17:02Z");
  CHECK(plan.now == instant("2027-04-05T17:05Z"));
  CHECK(plan.schedule.span.begin == plan.now);
  CHECK_FALSE(plan.takeoff.surfaces.empty());
  CHECK(plan.volumes.coats.size() == 6);
  CHECK(plan.schedule.steps.size() == plan.list.operations.size());
  CHECK(plan.emissions.size() == plan.volumes.coats.size());
  CHECK_FALSE(plan.cautions.empty());
  REQUIRE(plan.shopping.coatings.size() == 1);
  CHECK_FALSE(plan.job.data.texts.deference.empty());
}

TEST_CASE("what the searches for a plan do is taken off the effort of the run, whatever the aim") {
  for (const Aim aim : {Aim::ready, Aim::sessions}) {
    Job job = sample_job();
    job.aim = aim;
    Problems problems;
    solver::Effort effort{.left = most_effort};
    REQUIRE(make_plan(job, instant("2027-04-05T17:00Z"), problems, {}, &effort));
    CHECK(effort.left < most_effort);
    CHECK(effort.left > 0);
  }
}

// make_plan throws when the schedule breaks a rule, so a plan that comes back has passed its audit.
TEST_CASE("every demo plans whole, with a date for each step and tins for nine jobs in ten") {
  for (const char* demo : demos) {
    CAPTURE(demo);
    Problems problems;
    auto job = read_job(FilesOnDisk(), std::filesystem::path(TACKFREE_ROOT) / "data/demo" / demo,
                        std::nullopt, problems);
    REQUIRE(job);
    const Instant now = job->now_at.value();
    const auto plan = make_plan(std::move(*job), now, problems);
    REQUIRE(plan);
    CHECK(problems.empty());
    CHECK(plan->schedule.unplaced.empty());
    CHECK(plan->schedule.ready_at);
    CHECK(plan->schedule.steps.size() == plan->list.operations.size());
    for (const CoatingPurchase& purchase : plan->shopping.coatings)
      CHECK(purchase.on_shelf + purchase.tins.bought >= purchase.nine_in_ten);
  }
}

TEST_CASE(
    "a coat that would miss its window is sanded for, and the plan keeps every rule (rule 2)") {
  Job job = sample_job();
  job.coatings[0].needs_sanding_between = false;
  const auto sanded = [](const Plan& plan) {
    return std::ranges::count(plan.list.operations, OperationKind::sand_between, &Operation::kind);
  };
  const Plan plan = plan_of(job);  // evenings: 24 h from coat to coat, the window is 12 h
  CHECK(sanded(plan) == 2);
  CHECK(plan.keyed.size() == 2);
  CHECK(plan.schedule.unplaced.empty());
  for (auto& day : job.calendar.weekly) day = {{6 * 60, 20 * 60}};
  job.coatings[0].recoat_unsanded_within = sourced(hours(30), Origin::label);
  CHECK(sanded(plan_of(job)) == 0);
}

TEST_CASE("the demos between them have every kind of part and feature, and five classes and more") {
  std::set<std::size_t> shapes, features;
  std::set<std::string> classes;
  bool sheets = false, moved_after = false;
  for (const char* demo : demos) {
    Problems problems;
    const auto job =
        read_job(FilesOnDisk(), std::filesystem::path(TACKFREE_ROOT) / "data/demo" / demo,
                 std::nullopt, problems);
    REQUIRE(job);
    for (const Part& part : job->parts) {
      shapes.insert(part.shape.index());
      sheets = sheets ||
               (std::holds_alternative<Board>(part.shape) && part.material != Material::solid_wood);
      for (const auto& feature : part.features) features.insert(feature.index());
    }
    for (const Batch& batch : job->batches) moved_after = moved_after || !batch.after.empty();
    for (const Coating& coating : job->coatings) classes.insert(coating.class_key);
    CHECK(job->room.volume);
  }
  // Estimated frames stand for no shape of their own.
  CHECK(shapes.size() == std::variant_size_v<Shape> - 1);
  CHECK(sheets);
  CHECK(features.size() == std::variant_size_v<Feature> - 1);  // all but masked strips
  CHECK(classes.size() >= 5);
  CHECK(moved_after);
}

// Seen failing: tape for one round was bought, and it is pulled off each wet coat.
TEST_CASE("tape is bought for every coat that is to come") {
  Job job = sample_job();
  Groove groove{.face = Face::bottom,
                .length = millimetres(400),
                .width = millimetres(6),
                .depth = millimetres(8),
                .masked = true};
  job.parts[0].features = {groove};
  const Plan plan = plan_of(job);
  const auto tape =
      std::ranges::find(plan.shopping.sundries, Sundry::Item::masking_tape, &Sundry::item);
  REQUIRE(tape != plan.shopping.sundries.end());
  CHECK(tape->amount == doctest::Approx(3 * 0.812));
}

TEST_CASE("the litres to buy are the coats and what the tools keep in the plan's own sessions") {
  const Plan plan = plan_of(sample_job());
  Volume coats;
  for (const CoatNeed& need : plan.volumes.coats) coats += need.coating;
  const CoatingPurchase& purchase = plan.shopping.coatings[0];
  CHECK(purchase.on_surfaces.in(litres) == doctest::Approx(coats.in(litres)));
  CHECK(purchase.sessions == static_cast<int>(plan.schedule.sessions.size()));
  CHECK(purchase.kept_by_tools.in(millilitres) == doctest::Approx(20.0 * purchase.sessions));
}

TEST_CASE("sprayed coats bring the caution about spraying, brushed ones do not") {
  const auto warns = [](const Plan& plan) {
    return std::any_of(plan.cautions.begin(), plan.cautions.end(),
                       [](const RaisedCaution& caution) { return caution.text.key == "spraying"; });
  };
  Job job = sample_job();
  CHECK_FALSE(warns(plan_of(job)));
  job.systems[0].steps[0].method = "hvlp";
  CHECK(warns(plan_of(job)));
}

TEST_CASE("water that thins a waterborne coat is no solvent in the air") {
  Job job = sample_job("waterborne_polyurethane");
  const Plan plain = plan_of(job);
  job.systems[0].steps[0].first_coat_thinner = sourced(percent(20), Origin::measured);
  const Plan thinned = plan_of(job);
  REQUIRE(thinned.volumes.coats[0].thinner > Volume());
  CHECK(thinned.emissions[0].solvent < plain.emissions[0].solvent);
}

TEST_CASE("what the log has taught changes the litres, not the areas") {
  const Plan untaught = plan_of(sample_job());
  Job thirsty = sample_job();
  LogEntry coat{.id = 1, .kind = LogKind::coat, .at = instant("2027-04-04T18:00Z")};
  coat.step = "top/finish/coat-1/back/coat";
  coat.amount = untaught.volumes.coats[0].mixed * 1.3;
  thirsty.history.entries = {coat};
  const Plan taught = plan_of(thirsty);
  CHECK(taught.volumes.coats[0].coating > untaught.volumes.coats[0].coating);
  CHECK(taught.volumes.coats[0].area == untaught.volumes.coats[0].area);
}

TEST_CASE("air that begins after the plan does is a problem, not a plan") {
  Job job = sample_job();
  AirRows rows;
  rows.file = "air.csv";
  for (int h = 0; h < 48; ++h)
    rows.rows.push_back({instant("2027-05-01T00:00Z") + std::chrono::hours(h), celsius(15),
                         std::nullopt, humidity_percent(50), h + 2});
  job.air = rows;
  Problems problems;
  CHECK_FALSE(make_plan(job, instant("2027-04-05T17:00Z"), problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "air.csv");
}

TEST_CASE("the finished plan is judged in its room, by the job's habit or as closed") {
  Job job = sample_job();
  const Plan closed = plan_of(job);
  REQUIRE(closed.room);
  CHECK(closed.room->verdict == HabitVerdict::too_little);
  CHECK(closed.room->stretches.size() == closed.schedule.sessions.size());
  REQUIRE(closed.room->proposed);
  job.room.airing = closed.room->proposed;
  const Plan aired = plan_of(job);
  CHECK(aired.room->verdict == HabitVerdict::enough);
  const auto word = [](const Plan& plan) {
    return std::find_if(plan.cautions.begin(), plan.cautions.end(),
                        [](const RaisedCaution& c) { return c.text.key == "solvent_vapour"; })
        ->text.word;
  };
  CHECK(word(closed) == "WARNING");
  CHECK(word(aired) == "CAUTION");
}

TEST_CASE("a fast finish sprayed in a small closed room is stopped with the flow that would do") {
  Job job = sample_job("shellac");
  job.systems[0].steps[0].method = "hvlp";
  job.room.volume = cubic_metres(10);
  const Plan plan = plan_of(job);
  REQUIRE(plan.room);
  CHECK(plan.room->stops());
  CHECK(plan.room->limit(VapourLimit::quarter_explosive).least_flow > AirFlow{});
  CHECK(plan.cautions.front().text.word == "DANGER");
  CHECK(plan.cautions.front().text.key == "ethanol_vapour");
  CHECK(plan.schedule.unplaced.empty());
}

TEST_CASE("what comes after a batch in lots is coated when every lot is dry to handle") {
  Job job = testing::sample_job();
  testing::add_legs(job);
  job.batches[0].sides = Sides::on_points;
  job.parts[0].quantity = 5;
  job.rooms = {{"shed", square_metres(2.7), std::nullopt, 0}};
  job.batches[0].rules.room = 0;
  job.batches[1].after = "top";
  Problems problems;
  const auto plan = make_plan(job, testing::instant("2027-04-05T17:00Z"), problems);
  REQUIRE(plan);
  const auto step_of = [&](const std::string& key) {
    for (const DatedStep& step : plan->schedule.steps)
      if (plan->list.operations[step.operation].key == key) return &step;
    throw std::runtime_error("no step " + key);
  };
  const DatedStep* legs = step_of("legs/finish/coat-1/both/coat");
  for (const char* lot : {"1", "2", "3"})
    CHECK(legs->begin() >= step_of(std::string("top-lot-") + lot + "/finish/coat-3/both/coat")
                               ->reaches[index_of(Stage::handle)]);
}

}  // namespace
}  // namespace tackfree
