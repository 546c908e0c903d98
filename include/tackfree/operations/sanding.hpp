// Sanding: which grits, in which order, on bare wood and between coats.
#pragma once

#include "tackfree/model/finishing_data.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/model/part.hpp"
#include "tackfree/operations/operation.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// Bare-wood grits for a part: veneer faces start finer (rule 6).
std::vector<Grit> bare_grits(const Coating& first_coating, Material material);

/// The grit that keys coat `coat` (1 for the first) of `coats` before the next one goes on; nothing
/// when the class needs none there or it is the last coat.
std::optional<Grit> between_grit(const Coating& coating, int coat, int coats);

/// The grit that keys a coat which its class does not sand there; nothing where it is never sanded.
std::optional<Grit> key_grit(const Coating& coating);

/// The finest grit that the class is sanded with between coats; nothing where it never is.
std::optional<Grit> finest_grit(const Coating& coating);

/// Of a batch of solid wood and sheets the parts that a grit of bare wood is for.
enum class SandedParts { all, solid, sheets };
SandedParts parts_sanded(const Job& job, const Operation& sanding);

}  // namespace tackfree
