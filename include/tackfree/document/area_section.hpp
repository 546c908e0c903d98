// Text areas: square metres to coat, part by part, by grain and by side, and what is masked.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

namespace tackfree {

/// One row for each part and one column for each grain that occurs, with the sum; on a wide page
/// the two sides as well; then the tape.
void write_areas(Page& page, const Job& job, const SurfaceTakeoff& takeoff, const Figures& figures);

/// The same by side: one column for each side that occurs.
void write_areas_by_side(Page& page, const Job& job, const SurfaceTakeoff& takeoff,
                         const Figures& figures);

}  // namespace tackfree
