#include "tackfree/fumes/respirator.hpp"

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

using Kind = Respirator::Kind;

/// One coat of one coating, whose cautions are given, brushed or sprayed.
std::optional<Respirator> worn(const std::vector<std::string>& cautions, bool sprayed,
                               bool cartridges_serve = true) {
  Job job = small_job();
  job.data.methods[0].sprayed = sprayed;
  job.data.solvents = {Solvent{.key = "alcohol"}};
  job.data.solvents[0].cartridges_serve = cartridges_serve;
  job.coatings[0].words.cautions = cautions;
  job.coatings[0].solvent_mix = {{"alcohol", sourced(percent(100), Origin::assumed)}};
  JobVolumes volumes;
  volumes.coatings = {CoatingNeed{}};
  Operation coat;
  coat.kind = OperationKind::coat;
  coat.coating = 0;
  coat.method = 0;
  OperationList list;
  list.operations = {coat};
  return respirator(job, list, volumes);
}

}  // namespace

TEST_CASE("the strictest respirator that anything in the room calls for is the only one") {
  CHECK_FALSE(worn({"waste"}, false));
  CHECK(worn({"waterborne_vapour"}, false)->kind == Kind::as_data_sheet);
  CHECK(worn({"solvent_vapour"}, false)->kind == Kind::organic_vapour);
  CHECK_FALSE(worn({"solvent_vapour"}, false)->worn_always);
  CHECK(worn({"solvent_vapour"}, true)->kind == Kind::organic_vapour_and_particles);
  CHECK(worn({"solvent_vapour"}, true)->worn_always);
  CHECK(worn({"strong_solvent_vapour", "formaldehyde"}, true)->kind == Kind::formaldehyde);
  CHECK(worn({"strong_solvent_vapour", "formaldehyde"}, true)->with_particle_filter);
}

// Source: NIOSH Alert 96-111 on isocyanates (from memory).
TEST_CASE("isocyanates take supplied air, from the gun whatever the airing") {
  const auto brushed = worn({"strong_solvent_vapour", "isocyanates"}, false);
  CHECK(brushed->kind == Kind::supplied_air);
  CHECK_FALSE(brushed->worn_always);
  const auto sprayed = worn({"strong_solvent_vapour", "isocyanates"}, true);
  CHECK(sprayed->kind == Kind::supplied_air);
  CHECK(sprayed->worn_always);
  CHECK(sprayed->against_sprayed_isocyanates);
}

TEST_CASE("a solvent without a listed cartridge takes supplied air") {
  const auto found = worn({"ethanol_vapour"}, false, false);
  CHECK(found->kind == Kind::supplied_air);
  CHECK(found->no_cartridges == std::vector<std::size_t>{0});
}
