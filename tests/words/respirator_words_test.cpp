#include "tackfree/words/respirator_words.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

using Kind = Respirator::Kind;

TEST_CASE("a respirator is told with when it is worn and why no cartridge does") {
  Job job;
  job.data.solvents = {Solvent{.key = "ethanol", .title = "ethanol"}};
  CHECK(
      respirator_sentences({.kind = Kind::organic_vapour, .no_cartridges = {}}, job) ==
      " Where you cannot air enough, wear an organic-vapour respirator. The safety data sheet may "
      "ask for more.");
  CHECK(respirator_sentences({.kind = Kind::organic_vapour_and_particles,
                              .worn_always = true,
                              .with_particle_filter = true,
                              .no_cartridges = {}},
                             job)
            .starts_with(" Wear an organic-vapour respirator with a particle filter that fits "
                         "whenever you spray."));
  CHECK(
      holds(respirator_sentences({.kind = Kind::supplied_air, .no_cartridges = {0}}, job),
            "do not coat, or wear a supplied-air respirator. No cartridge is listed for ethanol"));
  CHECK(holds(respirator_sentences({.kind = Kind::supplied_air,
                                    .worn_always = true,
                                    .with_particle_filter = true,
                                    .against_isocyanates = true,
                                    .against_sprayed_isocyanates = true,
                                    .no_cartridges = {}},
                                   job),
              "No filter mask will do"));
}

TEST_CASE("only mist of isocyanates is bound to a booth and supplied air") {
  Coating coating;
  Method gun;
  gun.sprayed = true;
  CHECK(spraying_condition(coating, gun).empty());
  coating.words.cautions = {"isocyanates"};
  CHECK(spraying_condition(coating, gun) == "only in a booth, on supplied air");
  gun.sprayed = false;
  CHECK(spraying_condition(coating, gun).empty());
}
