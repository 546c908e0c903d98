// Oily rags: work that left rags which heat themselves, until the log says they are dealt with.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"

#include <optional>

namespace tackfree {

/// Rags, cloths, pads and dust that dry by oxidation and can catch fire.
struct OilyRags {
  std::optional<Instant> out_since;   ///< since the first work whose rags are not dealt with
  std::optional<Instant> dealt_with;  ///< by the log, the last time
};

/// Does this work leave rags or dust that heat themselves: a coat that dries by oxidation, or the
/// sanding of one? Source: NFPA tip sheet on oily rags, which names rags, pads and sanding dust.
bool leaves_oily_rags(const Job& job, const OperationList& list, const Operation& work);

/// By the log up to `now`. Work that was taken as done counts too.
OilyRags oily_rags(const Job& job, const OperationList& list, Instant now);

}  // namespace tackfree
