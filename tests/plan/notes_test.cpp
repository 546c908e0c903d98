#include "tackfree/plan/notes.hpp"

#include "tackfree/plan/make_plan.hpp"

#include <utility>
#include <vector>

#include "logged_job.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::notes_of;

std::vector<Note> notes_on(Job job) {
  Problems problems;
  auto plan = make_plan(std::move(job), testing::instant("2027-04-05T17:00Z"), problems);
  REQUIRE(plan);
  return std::move(plan->notes);
}

template <class Kind>
bool has(const Job& job) {
  return !notes_of<Kind>(notes_on(job)).empty();
}

TEST_CASE("a plain job has nothing to be warned of") {
  CHECK(notes_on(testing::sample_job()).empty());
}

TEST_CASE("what the parts list calls for is among the plan's notes") {
  Job job = testing::sample_job();
  job.parts[0].coated = {Face::top, Face::front, Face::back};
  CHECK(has<OneFaceNote>(job));
}

TEST_CASE("films too thin for the wear and over the class's cap are said") {
  Job job = testing::sample_job();
  const auto film = [&] { return notes_of<FilmNote>(notes_on(job)); };
  job.systems[0].wear = Wear::hard;
  job.systems[0].steps[0].coats = 1;
  REQUIRE(film().size() == 1);
  CHECK(film()[0].fault == FilmNote::Fault::thin);
  CHECK(film()[0].coats == 1);
  job.systems[0].steps[0].coats = 6;
  REQUIRE(film().size() == 1);
  CHECK(film()[0].fault == FilmNote::Fault::thick);
  job.systems[0].steps[0].coats = std::nullopt;
  CHECK(film().empty());
}

TEST_CASE("a film that even the most coats of a class leave thin asks for another class") {
  Job job = testing::sample_job("two_component_polyurethane");
  job.systems[0].wear = Wear::hard;
  job.systems[0].steps[0].coats = 2;
  CHECK(notes_of<FilmNote>(notes_on(job)).at(0).fault == FilmNote::Fault::thin);
  job.systems[0].steps[0].coats = std::nullopt;
  CHECK(notes_of<FilmNote>(notes_on(job)).at(0).fault == FilmNote::Fault::thin_at_most);
}

/// The sample job with a coat of `under` below its finish.
Job over(const char* under, const char* finish) {
  Job job = testing::sample_job(finish);
  job.coatings.push_back(testing::named(testing::class_of(job.data, under), "seal"));
  job.coatings.back().contains_wax = false;
  job.systems[0].steps.insert(job.systems[0].steps.begin(),
                              {"seal", "seal", "brush", 1, std::nullopt, 0});
  return job;
}

TEST_CASE("a pair that nobody vouches for, or that needs care, is told (rule 5)") {
  using Trust = PairNote::Trust;
  const auto trust = [](const char* under, const char* finish) {
    return notes_of<PairNote>(notes_on(over(under, finish))).at(0).trust;
  };
  CHECK(trust("shellac", "conversion_varnish") != Trust::holds);
  CHECK(trust("drying_oil", "oil_polyurethane") != Trust::holds);
  CHECK(trust("shellac", "oil_polyurethane") == Trust::holds);
  CHECK_FALSE(has<PairNote>(over("shellac", "shellac")));
  const PairNote unknown =
      notes_of<PairNote>(notes_on(over("nitrocellulose_lacquer", "conversion_varnish"))).at(0);
  CHECK(unknown.trust == Trust::unknown);
  CHECK(unknown.waits == days(3));
}

TEST_CASE("a barrier coat below another film is not called thin") {
  CHECK_FALSE(has<FilmNote>(over("shellac", "oil_polyurethane")));
}

TEST_CASE("satin in every coat is said to cloud a finish that is to be clear (rule 14)") {
  Job job = testing::sample_job();
  job.coatings[0].sheen = Sheen::satin;
  CHECK_FALSE(has<SheenNote>(job));
  job.systems[0].clear_build = true;
  CHECK(has<SheenNote>(job));
  job.systems[0].steps[0].coats = 2;
  job.coatings.push_back(testing::named(job.coatings[0], "satin"));
  job.coatings[0].sheen = Sheen::gloss;
  job.systems[0].steps.push_back({"satin", "satin", "brush", 1, std::nullopt, 0});
  CHECK_FALSE(has<SheenNote>(job));
  CHECK_FALSE(has<FilmNote>(job));  // two of gloss and one of satin are one film
}

TEST_CASE("a coat that would miss the window of an unsanded one is sanded for and said (rule 2)") {
  Job job = testing::sample_job();
  job.coatings[0].needs_sanding_between = false;
  CHECK(has<MissedWindowNote>(job));
  job.coatings[0].recoat_unsanded_within = sourced(days(30), Origin::label);
  CHECK_FALSE(has<MissedWindowNote>(job));
  CHECK_FALSE(has<MissedWindowNote>(testing::sample_job()));
}

TEST_CASE("what is sanded between its coats anyway misses no window") {
  Problems problems;
  Job job = testing::sample_job();
  job.coatings[0].needs_sanding_between = true;
  auto plan = make_plan(std::move(job), testing::instant("2027-04-05T17:00Z"), problems);
  REQUIRE(plan);
  plan->keyed.insert({0, 0, 2, 1});
  CHECK(notes_of<MissedWindowNote>(notes(*plan)).empty());
  plan->job.coatings[0].needs_sanding_between = false;
  CHECK(notes_of<MissedWindowNote>(notes(*plan)).size() == 1);
}

TEST_CASE("sanding that the log has is no missed window, with or without a window of the class") {
  Job job = testing::logged_job(
      {testing::coat(1, testing::back_1, "2027-04-01T10:00Z"),
       testing::coat(2, testing::show_1, "2027-04-03T10:00Z"),
       testing::entry(3, LogKind::done, "top/finish/coat-2/both/sand-p240", "2027-04-05T10:00Z")});
  CHECK_FALSE(has<MissedWindowNote>(job));
  job.coatings[0].recoat_unsanded_within.reset();
  CHECK_FALSE(has<MissedWindowNote>(job));
}

TEST_CASE("filled pores bring the filler's advice") {
  Job job = testing::sample_job();
  CHECK_FALSE(has<FillerNote>(job));
  job.systems[0].steps[0].fill_pores = true;
  CHECK(has<FillerNote>(job));
}

TEST_CASE("coats put on above the class's humidity caution are said, below it not") {
  Job job = testing::sample_job("shellac");
  job.air = ConstantAir{celsius(20), humidity_percent(75)};
  CHECK(has<DampAirNote>(job));
  job.air = ConstantAir{celsius(20), humidity_percent(60)};
  CHECK_FALSE(has<DampAirNote>(job));
}

TEST_CASE("leave to beat the label is said") {
  Job job = testing::sample_job();
  job.faster_than_label = true;
  CHECK(testing::times_told(notes_on(job), PlainNote::faster_than_label) == 1);
}

TEST_CASE("a session that runs late is said") {
  Job job = testing::sample_job();
  for (auto& day : job.calendar.weekly) day = {{21 * 60, 23 * 60}};
  job.data.labour.bare_tool = SandingTool::hand;
  CHECK(has<LateWorkNote>(job));
}

}  // namespace
}  // namespace tackfree
