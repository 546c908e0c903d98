#include "tackfree/fumes/emission.hpp"

#include <stdexcept>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

JobVolumes volumes_of(const Job& job) {
  return job_volumes(job, take_off(job), std::vector<double>(job.coatings.size(), 1.0));
}

Mass total(const std::vector<CoatEmission>& emissions) {
  Mass sum;
  for (const CoatEmission& emission : emissions) sum += emission.solvent;
  return sum;
}

}  // namespace

TEST_CASE("every gram comes from the coating's volatiles or the thinner") {
  const Job job = small_job();
  const JobVolumes volumes = volumes_of(job);
  const auto released = emissions(job, volumes);
  REQUIRE(released.size() == volumes.coats.size());
  // 0.62284 L x 450 g/L + 0.02276 L x 780 g/L, by hand.
  CHECK(total(released).in(grams) == Approx(280.28 + 17.75).epsilon(1e-4));
  for (std::size_t i = 0; i < released.size(); ++i) CHECK(released[i].need == i);
}

TEST_CASE("the sides of a coat release what the coat in one go releases") {
  Job whole = small_job();
  whole.batches[0].sides = Sides::on_points;
  const Job turned = small_job();
  CHECK(total(emissions(whole, volumes_of(whole))) / total(emissions(turned, volumes_of(turned))) ==
        Approx(1));
}

// Source of the thinner densities: NIOSH Pocket Guide to Chemical Hazards, specific gravity of
// Stoddard solvent 0.78 and of ethyl alcohol 0.79.
TEST_CASE("thinner counts at its own density") {
  Job job = small_job();
  job.coatings[0].volatiles.value = grams_per_litre(0);
  const Volume thinner = volumes_of(job).coatings[0].thinner;
  CHECK(total(emissions(job, volumes_of(job))).in(grams) == Approx(thinner.in(litres)*780));
  job.coatings[0].thinner_volatiles.value = grams_per_litre(790);
  CHECK(total(emissions(job, volumes_of(job))).in(grams) == Approx(thinner.in(litres)*790));
}

// Arithmetic: a litre with 0.60 L of water and 70 g of volatiles has 175 g/L by the regulation's
// reckoning (less water), and releases 70 g.
TEST_CASE("what is released is not the regulatory figure") {
  Job job = small_job();
  job.coatings[0] = waterborne();
  job.coatings[0].volatiles.value = grams_per_litre(70);
  job.systems[0].steps[0].coating = "waterborne";
  const Volume litres_used = volumes_of(job).coatings[0].expected;
  CHECK(total(emissions(job, volumes_of(job))).in(grams) == Approx(70 * litres_used.in(litres)));
  CHECK(70 / (1 - 0.60) == Approx(175));
}

TEST_CASE("the bound of a still room is all the solvent over the whole volume") {
  CHECK(still_room_bound(grams(120), cubic_metres(40)).in(grams_per_cubic_metre) == Approx(3));
  CHECK(still_room_bound(grams(120), cubic_metres(40)) / assumed_explosive_limit == Approx(0.075));
}

// Source: lower explosive limits of the NIOSH Pocket Guide (ethanol 3.3 %, acetone 2.5 %, toluene
// 1.1 %, xylene 0.9 %, n-butyl acetate 1.7 %, turpentine 0.8 %), turned into g/m3 at 20 C by the
// molar volume of 24.055 L/mol.
TEST_CASE("the assumed explosive limit lies under those of the usual solvents, to the half gram") {
  struct Row {
    double lel_pct, molar_mass;
  };
  constexpr Row rows[] = {{3.3, 46.07},  {2.5, 58.08},  {1.1, 92.14},
                          {0.9, 106.17}, {1.7, 116.16}, {0.8, 136}};
  for (const Row& row : rows)
    CHECK(row.lel_pct * 10 * row.molar_mass / 24.055 >
          assumed_explosive_limit.in(grams_per_cubic_metre)-0.5);
}

TEST_CASE("what a coat gives off is split by solvent, the coating's and the thinner's together") {
  Job job = small_job();
  Solvent spirits, xylene;
  spirits.key = "mineral_spirits";
  xylene.key = "xylene";
  job.data.solvents = {xylene, spirits};
  job.coatings[0].solvent_mix = {{"mineral_spirits", {percent(75)}}, {"xylene", {percent(25)}}};
  job.coatings[0].thinner_mix = {{"mineral_spirits", {percent(100)}}};
  const JobVolumes volumes = volumes_of(job);
  for (const CoatEmission& emission : emissions(job, volumes)) {
    const CoatNeed& need = volumes.coats[emission.need];
    REQUIRE(emission.parts.size() == 2);
    CHECK(emission.parts[0].solvent == 1);
    CHECK(emission.parts[0].mass.in(grams) ==
          Approx(0.75 * 450 * need.coating.in(litres) + 780 * need.thinner.in(litres)));
    CHECK(emission.parts[1].mass.in(grams) == Approx(0.25 * 450 * need.coating.in(litres)));
  }
  job.coatings[0].solvent_mix = {{"no such", {percent(100)}}};
  CHECK_THROWS_AS(emissions(job, volumes), std::out_of_range);
}

// Source of the density: NIOSH Pocket Guide to Chemical Hazards, Stoddard solvent, specific gravity
// 0.78; that 100 ml clean the tools of a session is common practice, no source; that all of it
// evaporates is assumed.
TEST_CASE(
    "cleaning the tools of a session gives off 78 g where spirits clean, nothing with water") {
  Job job = small_job();
  job.data.shop.cleaner_per_session = sourced(millilitres(100), Origin::practice);
  job.data.shop.cleaner_volatiles = sourced(grams_per_litre(780), Origin::assumed);
  CHECK(cleaning_parts(job, 0).empty());
  job.data.solvents = {Solvent{.key = "mineral_spirits", .title = "mineral spirits"}};
  job.coatings[0].cleaner_mix = {
      {job.data.solvents.at(0).key, sourced(percent(100), Origin::assumed)}};
  const auto parts = cleaning_parts(job, 0);
  REQUIRE(parts.size() == 1);
  CHECK(parts[0].mass.in(grams) == doctest::Approx(78));
  // What thins it has its own density, and counts with that where it cleans too.
  job.coatings[0].thinner_volatiles.value = grams_per_litre(880);
  job.coatings[0].words.thinner = job.coatings[0].words.cleaner = "the maker's thinner";
  CHECK(cleaning_parts(job, 0).at(0).mass.in(grams) == doctest::Approx(88));
  job.coatings[0].words.cleaner = "mineral spirits";
  CHECK(cleaning_parts(job, 0).at(0).mass.in(grams) == doctest::Approx(78));
}
