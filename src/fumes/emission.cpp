#include "tackfree/fumes/emission.hpp"

#include <stdexcept>

namespace tackfree {
namespace {

const Coating& coating_of(const Job& job, const CoatNeed& need) {
  const FinishSystem* system = find_named(job.systems, job.batches.at(need.batch).system);
  if (system == nullptr) throw std::out_of_range("a coat of a system that the job does not hold");
  const Coating* coating = find_named(job.coatings, system->steps.at(need.step).coating);
  if (coating == nullptr) throw std::out_of_range("a coat of a coating that the job does not hold");
  return *coating;
}

}  // namespace

std::vector<CoatEmission> emissions(const Job& job, const JobVolumes& volumes) {
  std::vector<CoatEmission> result;
  for (std::size_t index = 0; index < volumes.coats.size(); ++index) {
    const CoatNeed& need = volumes.coats[index];
    const Coating& coating = coating_of(job, need);
    result.push_back({.need = index,
                      .solvent = need.coating * coating.volatiles.value +
                                 need.thinner * coating.thinner_volatiles.value});
  }
  return result;
}

MassPerVolume still_room_bound(Mass solvent, Volume room) { return solvent / room; }

}  // namespace tackfree
