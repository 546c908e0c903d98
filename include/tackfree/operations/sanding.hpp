// Sanding: which grits, in which order, on bare wood and between coats.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/finishing_data.hpp"
#include "tackfree/model/part.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// Mean grain size of a P-grade.
/// Source: FEPA 43-1 / ISO 6344; P240 to P2500 are the medians ds50, from memory.
/// Throws std::out_of_range for a grade that the scale does not have.
Length grain_size(Grit grit);

/// How many grades of the scale lie between two grits: 0 for neighbours.
int grits_skipped(Grit coarse, Grit fine);

/// Bare-wood grits for a part: veneer faces start finer (rule 6).
std::vector<Grit> bare_grits(const Coating& first_coating, Material material);

/// The grit that keys coat `coat` (1 for the first) of `coats` before the next one goes on; nothing
/// when the class needs none there or it is the last coat.
std::optional<Grit> between_grit(const Coating& coating, int coat, int coats);

/// The grit that keys a coat which its class does not sand there; nothing where it is never sanded.
std::optional<Grit> key_grit(const Coating& coating);

}  // namespace tackfree
