#include "tackfree/operations/sanding.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace tackfree {

namespace {

/// Micrometres, grade by grade of p_grades.
/// Source: FEPA 43-1 / ISO 6344 (P12 to P220 mean sizes of the macrogrits; P240 to P2500 median
/// ds50 of the microgrits, from memory).
constexpr std::array<double, p_grades.size()> grain_micrometres{
    1815, 1324, 1000, 764,  642,  538,  425,  336,  269,  201,  162,  125,  100,  82,
    68,   58.5, 52.2, 46.2, 40.5, 35.0, 30.2, 25.8, 21.8, 18.3, 15.3, 12.6, 10.3, 8.4};

std::ptrdiff_t place_on_scale(Grit grit) {
  const auto found = std::find(p_grades.begin(), p_grades.end(), grit.p);
  if (found == p_grades.end()) throw std::out_of_range("no such grade on the P-scale");
  return found - p_grades.begin();
}

}  // namespace

Length grain_size(Grit grit) {
  return millimetres(grain_micrometres[static_cast<std::size_t>(place_on_scale(grit))] / 1000);
}

int grits_skipped(Grit coarse, Grit fine) {
  return static_cast<int>(place_on_scale(fine) - place_on_scale(coarse)) - 1;
}

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

}  // namespace tackfree
