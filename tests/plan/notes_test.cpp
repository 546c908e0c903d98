#include "tackfree/plan/notes.hpp"

#include "tackfree/plan/make_plan.hpp"

#include <algorithm>

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

bool notes_on(Job job, const std::string& about) {
  Problems problems;
  const auto plan = make_plan(std::move(job), testing::instant("2027-04-05T17:00Z"), problems);
  REQUIRE(plan);
  return std::any_of(plan->notes.begin(), plan->notes.end(),
                     [&](const Note& note) { return note.about == about; });
}

TEST_CASE("a plain job has nothing to be warned of") {
  Problems problems;
  const auto plan =
      make_plan(testing::sample_job(), testing::instant("2027-04-05T17:00Z"), problems);
  for (const Note& note : plan->notes) FAIL_CHECK(note.text);
}

TEST_CASE("what the parts list calls for is among the plan's notes") {
  Job job = testing::sample_job();
  job.parts[0].coated = {Face::top, Face::front, Face::back};
  CHECK(notes_on(job, "one face only"));
}

TEST_CASE("films too thin for the wear and over the class's cap are said") {
  Job job = testing::sample_job();
  job.systems[0].wear = Wear::hard;
  job.systems[0].steps[0].coats = 1;
  CHECK(notes_on(job, "film"));
  job.systems[0].steps[0].coats = 6;
  CHECK(notes_on(job, "film"));
  job.systems[0].steps[0].coats = std::nullopt;
  CHECK_FALSE(notes_on(job, "film"));
}

TEST_CASE("two classes over each other ask for a test board (rule 5)") {
  Job job = testing::sample_job();
  job.coatings.push_back(testing::named(testing::class_of(job.data, "shellac"), "seal"));
  job.systems[0].steps.insert(job.systems[0].steps.begin(),
                              {"seal", "seal", "brush", 1, std::nullopt, 0});
  CHECK(notes_on(job, "test board"));
}

TEST_CASE("coats put on above the class's humidity caution are said, below it not") {
  Job job = testing::sample_job("shellac");
  job.air = ConstantAir{celsius(20), humidity_percent(75)};
  CHECK(notes_on(job, "damp air"));
  job.air = ConstantAir{celsius(20), humidity_percent(60)};
  CHECK_FALSE(notes_on(job, "damp air"));
}

TEST_CASE("leave to beat the label is said") {
  Job job = testing::sample_job();
  job.faster_than_label = true;
  CHECK(notes_on(job, "label"));
}

TEST_CASE("a session that runs late is said") {
  Job job = testing::sample_job();
  for (auto& day : job.calendar.weekly) day = {{21 * 60, 23 * 60}};
  job.data.labour.bare_tool = SandingTool::hand;
  CHECK(notes_on(job, "late work"));
}

}  // namespace
}  // namespace tackfree
