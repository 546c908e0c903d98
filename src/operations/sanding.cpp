#include "tackfree/operations/sanding.hpp"

#include <algorithm>

namespace tackfree {

std::vector<Grit> bare_grits(const Coating& first_coating, Material material) {
  return material != Material::solid_wood ? first_coating.grits.bare_veneer.value
                                          : first_coating.grits.bare.value;
}

std::optional<Grit> between_grit(const Coating& coating, int coat, int coats) {
  if (!coating.needs_sanding_between) return std::nullopt;
  const auto& grit = coating.grits.after_coat(coat, coats);
  return grit ? std::optional(grit->value) : std::nullopt;
}

std::optional<Grit> key_grit(const Coating& coating) {
  const GritAdvice& grits = coating.grits;
  for (const auto* grit : {&grits.between, &grits.after_first, &grits.before_last})
    if (*grit) return (*grit)->value;
  return std::nullopt;
}

std::optional<Grit> finest_grit(const Coating& coating) {
  const GritAdvice& grits = coating.grits;
  std::optional<Grit> finest;
  for (const auto* grit : {&grits.after_first, &grits.between, &grits.before_last})
    if (*grit) finest = std::max(finest, std::optional((*grit)->value));
  return finest;
}

SandedParts parts_sanded(const Job& job, const Operation& sanding) {
  const Batch& batch = job.batches.at(sanding.batch);
  const FinishSystem* system = find_named(job.systems, batch.system);
  if (system == nullptr || system->steps.empty() || !sanding.grit) return SandedParts::all;
  const Coating* first = find_named(job.coatings, system->steps.front().coating);
  if (first == nullptr) return SandedParts::all;
  bool solid = false, sheets = false;  // left out
  for (const Part& part : job.parts) {
    if (part.batch != batch.name) continue;
    const auto grits = bare_grits(*first, part.material);
    if (std::find(grits.begin(), grits.end(), *sanding.grit) != grits.end()) continue;
    (part.material == Material::solid_wood ? solid : sheets) = true;
  }
  if (solid == sheets) return SandedParts::all;
  return sheets ? SandedParts::solid : SandedParts::sheets;
}

}  // namespace tackfree
