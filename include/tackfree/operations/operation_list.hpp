// Operation list: what must be done to each batch, in which order, and how.
#pragma once

#include "tackfree/operations/operation.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"
#include "tackfree/volume/job_volumes.hpp"

#include <set>

namespace tackfree {

/// A coat of one batch, by step of its system and number, and how often a fault has cost it.
struct CoatPlace {
  std::size_t batch = 0;
  std::size_t step = 0;
  int coat = 0;
  int again = 0;
  friend auto operator<=>(const CoatPlace&, const CoatPlace&) = default;
};
inline CoatPlace place_of(const Operation& coat) {
  return {coat.batch, coat.step, coat.coat, coat.again};
}

/// Coats that are sanded for although their tin asks for none: they come too late to hold unsanded.
using KeyedCoats = std::set<CoatPlace>;

/// Sanding bare, then coat by coat, side by side, with the waits between; then hardware, and
/// what the system asks for after the last coat. Pots of
/// two-part coats are counted for the `warmest` air that they may be put on in, without it for the
/// label's.
OperationList operation_list(const Job& job, const SurfaceTakeoff& takeoff,
                             const JobVolumes& volumes, const KeyedCoats& keyed = {},
                             std::optional<Temperature> warmest = {});

}  // namespace tackfree
