// Surface takeoff: square metres to be coated, by part, side, face and grain.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/job.hpp"

#include <span>
#include <vector>

namespace tackfree {

/// One kind of surface of one row of the parts list, all pieces together.
struct Surface {
  std::size_t part = 0;  ///< index into Job::parts
  Face face = Face::top;
  Side side = Side::show;  ///< back or show, never both
  Grain grain = Grain::face;
  Area area;
};

/// Masking for one row of the parts list, all pieces together.
struct Masking {
  std::size_t part = 0;
  Length tape;
};

struct SurfaceTakeoff {
  std::vector<Surface> surfaces;  ///< in the order of the parts list
  std::vector<Masking> masking;
};

/// Takes the areas off `job.parts`. Walls count on the face they open to, by their own grain; walls
/// right through (rims, bores, the inside of a louvre's frame) on the top, or on the bottom where
/// the top is not coated. An estimated frame has its allowance on both faces. The shapes must be
/// possible: the parts reader sees to it that features lie inside their boards.
SurfaceTakeoff take_off(const Job& job);

/// The surfaces of one row of the parts list.
std::span<const Surface> surfaces_of(const SurfaceTakeoff& takeoff, std::size_t part);

/// The sum over the surfaces that `wanted` picks.
template <class Predicate>
Area area_where(const SurfaceTakeoff& takeoff, Predicate wanted) {
  Area sum;
  for (const Surface& s : takeoff.surfaces)
    if (wanted(s)) sum += s.area;
  return sum;
}

}  // namespace tackfree
