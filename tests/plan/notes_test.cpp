#include "tackfree/plan/notes.hpp"

#include "tackfree/plan/make_plan.hpp"

#include <algorithm>

#include "logged_job.hpp"
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

TEST_CASE(
    "a film that even the most coats of a class leave thin is said to ask for another class") {
  Job job = testing::sample_job("waterborne_polyurethane");
  job.systems[0].wear = Wear::hard;
  job.systems[0].steps[0].coats = 2;
  Problems problems;
  const auto told = [&](const Job& of) {
    const auto plan = make_plan(of, testing::instant("2027-04-05T17:00Z"), problems);
    for (const Note& note : plan->notes)
      if (note.about == "film") return note.text;
    return std::string();
  };
  CHECK(told(job).find("plan another coat") != std::string::npos);
  job.systems[0].steps[0].coats = std::nullopt;
  CHECK(told(job).find("bears no more coats") != std::string::npos);
}

/// The sample job with a coat of `under` below its finish.
Job over(const char* under, const char* finish) {
  Job job = testing::sample_job(finish);
  job.coatings.push_back(testing::named(testing::class_of(job.data, under), "seal"));
  job.systems[0].steps.insert(job.systems[0].steps.begin(),
                              {"seal", "seal", "brush", 1, std::nullopt, 0});
  return job;
}

TEST_CASE("a pair that nobody vouches for, or that needs care, asks for a test board (rule 5)") {
  CHECK(notes_on(over("shellac", "conversion_varnish"), "test board"));
  CHECK(notes_on(over("drying_oil", "oil_polyurethane"), "test board"));
  CHECK_FALSE(notes_on(over("shellac", "oil_polyurethane"), "test board"));
  CHECK(notes_on(over("shellac", "oil_polyurethane"), "pair"));
  CHECK_FALSE(notes_on(over("shellac", "shellac"), "pair"));
}

TEST_CASE("a barrier coat below another film is not called thin") {
  CHECK_FALSE(notes_on(over("shellac", "oil_polyurethane"), "film"));
}

TEST_CASE("satin in every coat is said to cloud a finish that is to be clear (rule 14)") {
  Job job = testing::sample_job();
  job.coatings[0].sheen = Sheen::satin;
  CHECK_FALSE(notes_on(job, "sheen"));
  job.systems[0].clear_build = true;
  CHECK(notes_on(job, "sheen"));
  job.systems[0].steps[0].coats = 2;
  job.coatings.push_back(testing::named(job.coatings[0], "satin"));
  job.coatings[0].sheen = Sheen::gloss;
  job.systems[0].steps.push_back({"satin", "satin", "brush", 1, std::nullopt, 0});
  CHECK_FALSE(notes_on(job, "sheen"));
  CHECK_FALSE(notes_on(job, "film"));  // two of gloss and one of satin are one film
}

TEST_CASE("a coat that would miss the window of an unsanded one is sanded for and said (rule 2)") {
  Job job = testing::sample_job();
  job.coatings[0].needs_sanding_between = false;
  CHECK(notes_on(job, "recoat window"));
  job.coatings[0].recoat_unsanded_within = sourced(days(30), Origin::label);
  CHECK_FALSE(notes_on(job, "recoat window"));
  CHECK_FALSE(notes_on(testing::sample_job(), "recoat window"));
}

TEST_CASE("sanding that the log has is no missed window, with or without a window of the class") {
  Job job = testing::logged_job(
      {testing::coat(1, testing::back_1, "2027-04-01T10:00Z"),
       testing::coat(2, testing::show_1, "2027-04-03T10:00Z"),
       testing::entry(3, LogKind::done, "top/finish/coat-2/both/sand-p240", "2027-04-05T10:00Z")});
  CHECK_FALSE(notes_on(job, "recoat window"));
  job.coatings[0].recoat_unsanded_within.reset();
  CHECK_FALSE(notes_on(job, "recoat window"));
}

TEST_CASE("filled pores bring the filler's advice") {
  Job job = testing::sample_job();
  CHECK_FALSE(notes_on(job, "paste filler"));
  job.systems[0].steps[0].fill_pores = true;
  CHECK(notes_on(job, "paste filler"));
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
