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

}  // namespace tackfree
