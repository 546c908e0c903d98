#include "tackfree/operations/sanding.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace tackfree {

namespace {

struct Grade {
  int p;
  double micrometres;
};

/// Source: FEPA 43-1 / ISO 6344 (P12 to P220 mean sizes of the macrogrits; P240 to P2500 median
/// ds50 of the microgrits, from memory).
constexpr std::array<Grade, 28> scale{
    {{12, 1815},   {16, 1324},   {20, 1000},   {24, 764},   {30, 642},   {36, 538},
     {40, 425},    {50, 336},    {60, 269},    {80, 201},   {100, 162},  {120, 125},
     {150, 100},   {180, 82},    {220, 68},    {240, 58.5}, {280, 52.2}, {320, 46.2},
     {360, 40.5},  {400, 35.0},  {500, 30.2},  {600, 25.8}, {800, 21.8}, {1000, 18.3},
     {1200, 15.3}, {1500, 12.6}, {2000, 10.3}, {2500, 8.4}}};

std::ptrdiff_t place_on_scale(Grit grit) {
  const auto found =
      std::find_if(scale.begin(), scale.end(), [&](const Grade& g) { return g.p == grit.p; });
  if (found == scale.end()) throw std::out_of_range("no such grade on the P-scale");
  return found - scale.begin();
}

}  // namespace

Length grain_size(Grit grit) {
  return millimetres(scale[static_cast<std::size_t>(place_on_scale(grit))].micrometres / 1000);
}

const std::vector<Grit>& grit_scale() {
  static const std::vector<Grit> grades = [] {
    std::vector<Grit> all;
    for (const Grade& grade : scale) all.push_back({grade.p});
    return all;
  }();
  return grades;
}

int grits_skipped(Grit coarse, Grit fine) {
  return static_cast<int>(place_on_scale(fine) - place_on_scale(coarse)) - 1;
}

std::vector<Grit> bare_grits(const Coating& first_coating, Material material) {
  return material == Material::plywood ? first_coating.grits.bare_veneer.value
                                       : first_coating.grits.bare.value;
}

std::optional<Grit> between_grit(const Coating& coating, int coat, int coats) {
  if (!coating.needs_sanding_between || coat >= coats) return std::nullopt;
  if (coat == 1) return coating.grits.after_first.value;
  if (coat == coats - 1) return coating.grits.before_last.value;
  return coating.grits.between.value;
}

}  // namespace tackfree
