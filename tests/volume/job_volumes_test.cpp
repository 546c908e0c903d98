#include "tackfree/volume/job_volumes.hpp"

#include "tackfree/volume/nine_in_ten.hpp"

#include <cmath>
#include <stdexcept>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

JobVolumes volumes_of(const Job& job, std::vector<double> thirst = {}) {
  if (thirst.empty()) thirst.assign(job.coatings.size(), 1.0);
  return job_volumes(job, take_off(job), thirst);
}

SystemStep step(const std::string& coating, int coats) {
  SystemStep result;
  result.name = coating;
  result.coating = coating;
  result.method = "brush";
  result.coats = coats;
  return result;
}

/// The whole of one coat, its sides together.
CoatNeed whole_coat(const JobVolumes& volumes, std::size_t of_step, int coat) {
  CoatNeed sum;
  for (const CoatNeed& need : volumes.coats)
    if (need.step == of_step && need.coat == coat) {
      sum.area += need.area;
      sum.mixed += need.mixed;
      sum.coating += need.coating;
      sum.thinner += need.thinner;
    }
  return sum;
}

/// Two steps, two coats of waterborne under two of varnish.
Job two_step_job() {
  Job job = small_job();
  job.coatings = {waterborne(), oil_varnish()};
  job.systems[0].steps = {step("waterborne", 2), step("varnish", 2)};
  return job;
}

}  // namespace

// The project's own arithmetic, written out by hand: (2.268 x 1.25 + 0.036 x 2.0 x 1.25) / 12.3 /
// 0.95, then (2.268 + 0.036 x 1.3) / 12.3 / 0.95, then 2.304 / 12.3 / 0.95.
// The coating of the first coat is 0.2503209 / 1.1 = 0.2275645, to five digits 0.22756.
TEST_CASE("the worked top takes 0.62284 litres of varnish in three coats") {
  const JobVolumes volumes = volumes_of(small_job());
  constexpr double digits = 0.000005;
  CHECK(std::abs(whole_coat(volumes, 0, 1).mixed.in(litres)-0.25032) <= digits);
  CHECK(std::abs(whole_coat(volumes, 0, 1).coating.in(litres)-0.22756) <= digits);
  CHECK(std::abs(whole_coat(volumes, 0, 1).thinner.in(litres)-0.02276) <= digits);
  CHECK(std::abs(whole_coat(volumes, 0, 2).mixed.in(litres)-0.19810) <= digits);
  CHECK(std::abs(whole_coat(volumes, 0, 3).mixed.in(litres)-0.19718) <= digits);
  REQUIRE(volumes.coatings.size() == 1);
  CHECK(std::abs(volumes.coatings[0].expected.in(litres)-0.62284) <= digits);
  CHECK(std::abs(volumes.coatings[0].thinner.in(litres)-0.02276) <= digits);
}

TEST_CASE("the worked top's film is good: 81.8 um of 80") {
  const JobVolumes volumes = volumes_of(small_job());
  REQUIRE(volumes.films.size() == 1);
  const StepFilm& film = volumes.films[0];
  CHECK(film.build.coats == 3);
  CHECK(std::abs(film.build.counted_dry.in(micrometres)-81.8) < 0.05);
  CHECK(film.aim.in(micrometres) == Approx(80));
  CHECK(film.verdict == StepFilm::Verdict::good);
  CHECK_FALSE(film.coats_fixed);
}

TEST_CASE("coating and thinner of every coat are its mix") {
  for (const CoatNeed& need : volumes_of(two_step_job()).coats)
    CHECK((need.coating + need.thinner).in(litres) == Approx(need.mixed.in(litres)));
}

TEST_CASE("a batch that is turned over gets back, then show, coat by coat") {
  const JobVolumes volumes = volumes_of(small_job());
  REQUIRE(volumes.coats.size() == 6);
  for (std::size_t i = 0; i < 6; ++i) {
    CHECK(volumes.coats[i].coat == static_cast<int>(i / 2) + 1);
    CHECK(volumes.coats[i].side == (i % 2 == 0 ? Side::back : Side::show));
  }
  CHECK(volumes.coats[0].area.in(square_metres) == Approx(1.08));
  CHECK(volumes.coats[1].area.in(square_metres) == Approx(1.08 + 0.144));
}

TEST_CASE("on points, or with one side only, a coat goes on in one go") {
  Job on_points = small_job();
  on_points.batches[0].sides = Sides::on_points;
  Job one_side = small_job();
  one_side.parts[0].coated = {Face::top, Face::front};
  for (const Job& job : {on_points, one_side}) {
    const JobVolumes volumes = volumes_of(job);
    CHECK(volumes.coats.size() == 3);
    for (const CoatNeed& need : volumes.coats) CHECK(need.side == Side::both);
  }
}

TEST_CASE("the sides of a coat sum to the coat put on in one go") {
  Job whole = two_step_job();
  whole.batches[0].sides = Sides::on_points;
  const JobVolumes turned = volumes_of(two_step_job());
  const JobVolumes at_once = volumes_of(whole);
  CHECK(turned.coats.size() == 2 * at_once.coats.size());
  for (const CoatNeed& need : at_once.coats) {
    const CoatNeed sum = whole_coat(turned, need.step, need.coat);
    CHECK(sum.area / need.area == Approx(1));
    CHECK(sum.mixed / need.mixed == Approx(1));
    CHECK(sum.coating / need.coating == Approx(1));
  }
  for (std::size_t i = 0; i < at_once.coatings.size(); ++i)
    CHECK(turned.coatings[i].expected / at_once.coatings[i].expected == Approx(1));
}

TEST_CASE("coats of a coating sum to its litres") {
  const JobVolumes volumes = volumes_of(two_step_job());
  for (std::size_t of_step = 0; of_step < 2; ++of_step) {
    const Volume sum =
        whole_coat(volumes, of_step, 1).coating + whole_coat(volumes, of_step, 2).coating;
    CHECK(sum.in(litres) == Approx(volumes.coatings.at(of_step).expected.in(litres)));
  }
}

TEST_CASE(
    "only the first step meets bare wood: the next one drinks and is thinned as a later coat") {
  const JobVolumes volumes = volumes_of(two_step_job());
  const CoatNeed third_on_wood = whole_coat(volumes, 1, 1);
  CHECK(third_on_wood.mixed.in(litres) == Approx(2.304 / 12.3 / 0.95));
  CHECK(third_on_wood.thinner.in(litres) == 0.0);
  CHECK(volumes.films.at(1).build.counted_dry.in(micrometres) ==
        Approx(2 * 1000 / 12.3 * 0.45 - 4));
}

TEST_CASE("a second step after one coat still meets thirsty end grain") {
  Job job = two_step_job();
  job.systems[0].steps[0].coats = 1;
  CHECK(whole_coat(volumes_of(job), 1, 1).mixed.in(litres) ==
        Approx((2.268 + 0.036 * 1.3) / 12.3 / 0.95));
}

TEST_CASE("thinning that a step asks for goes before the class's, on any step's first coat") {
  Job job = two_step_job();
  job.systems[0].steps[0].first_coat_thinner = sourced(percent(20), Origin::measured);
  job.systems[0].steps[1].first_coat_thinner = sourced(percent(5), Origin::measured);
  const JobVolumes volumes = volumes_of(job);
  CHECK(whole_coat(volumes, 0, 1).thinner / whole_coat(volumes, 0, 1).coating == Approx(0.20));
  CHECK(whole_coat(volumes, 1, 1).thinner / whole_coat(volumes, 1, 1).coating == Approx(0.05));
  CHECK(whole_coat(volumes, 1, 2).thinner == Volume{});
}

TEST_CASE("fixed coats are kept and judged thin or thick") {
  Job job = small_job();
  job.systems[0].steps[0].coats = 2;
  CHECK(volumes_of(job).films[0].verdict == StepFilm::Verdict::thin);
  CHECK(volumes_of(job).films[0].coats_fixed);
  CHECK(volumes_of(job).coats.size() == 4);
  job.systems[0].steps[0].coats = 6;
  CHECK(volumes_of(job).films[0].verdict == StepFilm::Verdict::thick);
  job.systems[0].steps[0].coats = 4;
  CHECK(volumes_of(job).films[0].verdict == StepFilm::Verdict::good);
}

TEST_CASE("more area never needs fewer litres") {
  Volume before;
  for (double width = 0.1; width < 2.0; width += 0.1) {
    Job job = small_job();
    std::get<Board>(job.parts[0].shape).width = metres(width);
    const Volume now = volumes_of(job).coatings[0].expected;
    CHECK(now > before);
    before = now;
  }
}

TEST_CASE("a thirst of 1.2 takes a fifth more of everything") {
  const JobVolumes usual = volumes_of(small_job());
  const JobVolumes thirsty = volumes_of(small_job(), {1.2});
  for (std::size_t i = 0; i < usual.coats.size(); ++i)
    CHECK(thirsty.coats[i].mixed / usual.coats[i].mixed == Approx(1.2));
  CHECK(thirsty.coatings[0].thinner / usual.coatings[0].thinner == Approx(1.2));
  CHECK(thirsty.coatings[0].nine_in_ten == Approx(usual.coatings[0].nine_in_ten));
}

TEST_CASE("batches are reckoned apart and their litres together") {
  Job job = small_job();
  job.batches.push_back(job.batches[0]);
  job.batches[1].name = "second";
  job.batches[1].sides = Sides::on_points;
  Part part = small_top();
  part.batch = "second";
  job.parts.push_back(part);
  const JobVolumes volumes = volumes_of(job);
  CHECK(volumes.coats.size() == 9);
  CHECK(volumes.coats.back().batch == 1);
  CHECK(volumes.films.size() == 2);
  REQUIRE(volumes.coatings.size() == 1);
  CHECK(volumes.coatings[0].expected / volumes_of(small_job()).coatings[0].expected == Approx(2));
}

TEST_CASE("the nine-in-ten factor uses the bare coat's share of the varnish itself") {
  const JobVolumes volumes = volumes_of(small_job());
  const double share = 0.22756 / 0.62284;
  CHECK(volumes.coatings[0].nine_in_ten ==
        Approx(nine_in_ten_factor(0.15, 0.20, share)).epsilon(1e-5));
}

TEST_CASE("a coating that several methods put on varies as the loosest of them") {
  Job job = small_job();
  Method wipe = job.data.methods[0];
  wipe.key = "wipe";
  wipe.need_sigma.value = 0.30;
  job.data.methods.push_back(wipe);
  job.systems[0].steps = {step("varnish", 1), step("varnish", 1)};
  job.systems[0].steps[1].method = "wipe";
  const JobVolumes volumes = volumes_of(job);
  const Volume first = whole_coat(volumes, 0, 1).coating;
  CHECK(volumes.coatings[0].nine_in_ten ==
        Approx(nine_in_ten_factor(0.30, 0.20, first / volumes.coatings[0].expected)));
}

TEST_CASE("a batch without surfaces takes nothing, and an unknown name is refused") {
  Job job = small_job();
  job.parts.clear();
  CHECK(volumes_of(job).coats.empty());
  CHECK(volumes_of(job).coatings.empty());
  Job unknown = small_job();
  unknown.systems[0].steps[0].method = "broom";
  CHECK_THROWS_AS(volumes_of(unknown), std::out_of_range);
}

TEST_CASE("sprayed coats are thinned for the gun, all of them; brushed ones are not") {
  Job job = small_job();
  job.coatings[0].first_coat_thinner.value = percent(0);
  job.coatings[0].spray_thinner_of_mix = sourced(percent(10), Origin::practice);
  CHECK(volumes_of(job).coatings[0].thinner == Volume{});
  job.data.methods[0].sprayed = true;
  job.systems[0].steps[0].coats = 3;
  const JobVolumes volumes = volumes_of(job);
  for (int coat = 1; coat <= 3; ++coat) {
    const CoatNeed whole = whole_coat(volumes, 0, coat);
    CHECK(whole.thinner / whole.mixed == Approx(0.10));
  }
  const FilmBuild& build = volumes.films[0].build;
  CHECK(build.later_dry.in(micrometres) == Approx(1000 / 12.3 * 0.45 * 0.9));
  CHECK(build.first_dry == build.later_dry);
}

TEST_CASE("a coating with another spread for later coats goes further from the second coat on") {
  Job job = small_job();
  job.systems[0].steps[0].coats = 3;
  const JobVolumes plain = volumes_of(job);
  job.coatings[0].spread_later = sourced(square_metres_per_litre(24.6), Origin::practice);
  const JobVolumes later = volumes_of(job);
  CHECK(whole_coat(later, 0, 1).mixed == whole_coat(plain, 0, 1).mixed);
  CHECK(whole_coat(later, 0, 3).mixed / whole_coat(plain, 0, 3).mixed == Approx(0.5));
}

TEST_CASE("what goes into the wood has no film and no verdict") {
  Job job = small_job();
  job.coatings[0].builds_film = false;
  job.coatings[0].film_aim = {};
  job.coatings[0].film_cap = {};
  const StepFilm film = volumes_of(job).films[0];
  CHECK(film.build.counted_dry == FilmThickness{});
  CHECK(film.verdict == StepFilm::Verdict::good);
  CHECK(film.build.coats == job.coatings[0].coats_min.value);
}

TEST_CASE("of several classes only the last must reach its aim, each must keep under its cap") {
  Job job = two_step_job();
  job.coatings[0].class_key = "one";
  job.coatings[1].class_key = "other";
  job.systems[0].steps[0].coats = 1;
  job.systems[0].steps[1].coats = 3;
  const auto verdict = [&](std::size_t step) { return volumes_of(job).films[step].verdict; };
  CHECK(verdict(0) == StepFilm::Verdict::good);
  CHECK(verdict(1) == StepFilm::Verdict::good);
  job.systems[0].steps[1].coats = 1;
  CHECK(verdict(1) == StepFilm::Verdict::thin);
  job.systems[0].steps[0].coats = 9;
  CHECK(verdict(0) == StepFilm::Verdict::thick);
}

TEST_CASE("two tins of one class make one film, and the coats by film make room for the second") {
  Job job = small_job();
  job.coatings[0].class_key = "one";
  job.coatings.push_back(job.coatings[0]);
  job.coatings[1].name = "satin";
  job.systems[0].steps = {step("varnish", 2), step("satin", 1)};
  JobVolumes volumes = volumes_of(job);
  // As in three coats of one tin: 81.8 um.
  const FilmThickness sum = volumes.films[1].beneath + volumes.films[1].build.counted_dry;
  CHECK(std::abs(sum.in(micrometres)-81.8) < 0.05);
  CHECK(volumes.films[0].verdict == StepFilm::Verdict::good);
  CHECK(volumes.films[1].verdict == StepFilm::Verdict::good);
  job.systems[0].steps[0].coats.reset();
  volumes = volumes_of(job);
  CHECK(volumes.films[0].build.coats == 2);
  job.systems[0].wear = Wear::hard;
  CHECK(volumes_of(job).films[0].build.coats == 3);
}

TEST_CASE("over what only colours the wood the first coat drinks as on bare wood, unthinned") {
  Job job = two_step_job();
  job.coatings[0].seals_wood = false;
  const JobVolumes volumes = volumes_of(job);
  const JobVolumes bare = volumes_of(small_job());
  CHECK(whole_coat(volumes, 1, 1).mixed.in(litres) ==
        Approx(whole_coat(bare, 0, 1).mixed.in(litres)));
  CHECK(whole_coat(volumes, 1, 2).mixed.in(litres) ==
        Approx(whole_coat(bare, 0, 2).mixed.in(litres)));
  CHECK(whole_coat(volumes, 1, 1).thinner == Volume());
}
