// Operation list: what must be done to each batch, in which order, and how.
#pragma once

#include "tackfree/operations/operation.hpp"
#include "tackfree/takeoff/surface_takeoff.hpp"
#include "tackfree/volume/job_volumes.hpp"

namespace tackfree {

/// Sanding bare, then coat by coat, side by side, with the waits between; hardware last.
OperationList operation_list(const Job& job, const SurfaceTakeoff& takeoff,
                             const JobVolumes& volumes);

}  // namespace tackfree
