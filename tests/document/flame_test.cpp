// Flame: no remedy proposes a flame, a glowing heater or less airing while flammable vapour may be
// in the room. Held over the demos and the jobs of cold_jobs, made so cold that coats find no time.
#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/document/dead_end_section.hpp"
#include "tackfree/input/job_reader.hpp"
#include "tackfree/plan/dated_work.hpp"
#include "tackfree/plan/make_plan.hpp"
#include "tackfree/plan/remedies.hpp"
#include "tackfree/plan/what_if.hpp"
#include "tackfree/text/text_page.hpp"

#include <filesystem>
#include <regex>
#include <string>
#include <vector>

#include "holds.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

Job job_of(const std::string& folder) {
  Problems problems;
  auto job = read_job(FilesOnDisk(), std::filesystem::path(TACKFREE_ROOT) / folder, std::nullopt,
                      problems);
  REQUIRE(job);
  return std::move(*job);
}

/// The same in air so much colder.
Job colder(const Job& job, double kelvin) {
  return with_change(job, ConditionedAir{.warmer = kelvins(-kelvin)});
}

Plan remedied(const Job& job) {
  Problems problems;
  const Instant now = job.now_at.value();
  auto plan = make_plan(job, now, problems);
  REQUIRE(plan);
  solver::Effort effort{most_effort / 4};
  plan->remedies = remedies(*plan, job, now, effort);
  return std::move(*plan);
}

/// What a remedy may not touch, whatever else it does to the job.
void check_air_and_sources(const Job& job, const Job& changed) {
  CHECK(changed.room.airing == job.room.airing);
  CHECK(changed.room.ignition_sources == job.room.ignition_sources);
  CHECK(changed.rooms.size() == job.rooms.size());
  CHECK(heater_may_light(changed) == heater_may_light(job));
}

const ConditionedAir* warmth_of(const Remedy& remedy) {
  const auto* air = std::get_if<ConditionedAir>(&remedy.change);
  return air != nullptr && air->warmer > TemperatureDifference() ? air : nullptr;
}

/// What is printed warns where it warms, and has no key that would light or shut anything.
void check_words(const Plan& plan, bool warms) {
  TextPage page(2000);
  write_unplaced(page, plan, StepWords(plan));
  write_dead_end(page, plan, plan.remedies, WorkWords(plan.job));
  const std::string text = page.text();
  const std::string never = "Warm the room with nothing that has a flame or glows";
  std::size_t told = 0;
  for (auto at = text.find(never); at != std::string::npos; at = text.find(never, at + 1)) ++told;
  CHECK(told == (warms ? 2 : 0));
  CHECK_FALSE(holds(text, R"("heater_is": "flame")"));
  CHECK_FALSE(holds(text, R"("heater_is": "glowing")"));
  for (const char* key : {"\"airing\"", "\"while_coating\"", "\"ignition_sources\"", "\"heating\""})
    CHECK_FALSE(holds(text, key));
}

}  // namespace

TEST_CASE("no remedy for a demo or a job in the cold lights, glows, airs less or hides a source") {
  for (const std::string folder :
       {"data/demo/hall_bench/hall_bench.json", "data/demo/wall_shelves/wall_shelves.json",
        "data/demo/cabinet_fronts/cabinet_fronts.json", "data/demo/table_order/table_order.json",
        "tests/document/cold_jobs/garage/job.json", "tests/document/cold_jobs/barrier/job.json",
        "tests/document/cold_jobs/sprayed/job.json"}) {
    CAPTURE(folder);
    int warming = 0;
    for (const double kelvin : {10.0, 20.0}) {
      CAPTURE(kelvin);
      const Job job = colder(job_of(folder), kelvin);
      const Plan plan = remedied(job);
      bool warms = false;
      for (const Remedy& remedy : plan.remedies) {
        check_air_and_sources(job, with_change(job, remedy.change));
        if (const ConditionedAir* air = warmth_of(remedy)) {
          CHECK(air->heater == HeaterKind::sealed);
          warms = true;
          ++warming;
        }
      }
      check_words(plan, warms);
    }
    MESSAGE(folder << ": " << warming << " remedies that warm");
    CHECK(warming > 0);
  }
}
