#include "tackfree/fumes/emission.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace tackfree {
namespace {

const Coating& coating_of(const Job& job, const CoatNeed& need) {
  const FinishSystem* system = find_named(job.systems, job.batches.at(need.batch).system);
  if (system == nullptr) throw std::out_of_range("a coat of a system that the job does not hold");
  const Coating* coating = find_named(job.coatings, system->steps.at(need.step).coating);
  if (coating == nullptr) throw std::out_of_range("a coat of a coating that the job does not hold");
  return *coating;
}

/// Adds `mass` of what gives off `mix` to the parts.
void add_parts(const std::vector<Solvent>& solvents, const std::vector<SolventShare>& mix,
               Mass mass, std::vector<SolventMass>& parts) {
  if (mass <= Mass{}) return;
  for (const SolventShare& share : mix) {
    const auto named = std::ranges::find(solvents, share.solvent, &Solvent::key);
    if (named == solvents.end())
      throw std::out_of_range("a solvent that the data does not hold: " + share.solvent);
    const auto index = static_cast<std::size_t>(named - solvents.begin());
    auto part = std::ranges::find(parts, index, &SolventMass::solvent);
    if (part == parts.end()) part = parts.insert(part, {index, {}});
    part->mass += mass * share.share.value.in(fraction);
  }
}

}  // namespace

std::vector<CoatEmission> emissions(const Job& job, const JobVolumes& volumes) {
  std::vector<CoatEmission> result;
  for (std::size_t index = 0; index < volumes.coats.size(); ++index) {
    const CoatNeed& need = volumes.coats[index];
    const Coating& coating = coating_of(job, need);
    const Mass from_coating = need.coating * coating.volatiles.value;
    const Mass from_thinner = need.thinner * coating.thinner_volatiles.value;
    CoatEmission emission{.need = index, .solvent = from_coating + from_thinner};
    add_parts(job.data.solvents, coating.solvent_mix, from_coating, emission.parts);
    add_parts(job.data.solvents, coating.thinner_mix, from_thinner, emission.parts);
    result.push_back(std::move(emission));
  }
  return result;
}

std::vector<SolventMass> cleaning_parts(const Job& job, std::size_t coating) {
  const ShopFigures& shop = job.data.shop;
  const Coating& cleaned = job.coatings.at(coating);
  const bool as_thinner = cleaned.words.cleaner == cleaned.words.thinner &&
                          cleaned.thinner_volatiles.value > MassPerVolume();
  const MassPerVolume volatiles =
      as_thinner ? cleaned.thinner_volatiles.value : shop.cleaner_volatiles.value;
  std::vector<SolventMass> parts;
  add_parts(job.data.solvents, cleaned.cleaner_mix, shop.cleaner_per_session.value * volatiles,
            parts);
  return parts;
}

MassPerVolume still_room_bound(Mass solvent, Volume room) { return solvent / room; }

}  // namespace tackfree
