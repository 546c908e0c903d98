// Shapes: the surfaces of a shape by side and by how they lie to the grain.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/part.hpp"

#include <vector>

namespace tackfree {

/// How a surface lies to the grain: a face, long grain beside a face, or across the fibres.
enum class Cut { face, along, across };

/// A piece of surface. What is taken off has a negative area.
struct Patch {
  Face face = Face::top;
  Cut cut = Cut::face;
  Area area;
  bool opens_both_ways = false;  ///< a wall right through, from top to bottom
};

/// The cut that a side of a plain board or round shows.
Cut own_cut(Face face);

/// The surfaces of a shape before its features. Source of all: geometry.
///
/// Board: top and bottom length x width, front and back length x thickness, left and right width x
/// thickness. Round: side pi x diameter x length, each end pi/4 x diameter^2. Tube: side and inside
/// pi x diameter x length, each end the ring pi/4 x (outer^2 - inner^2). Turned: as the cylinder of
/// its greatest diameter, the side times the profile factor.
/// Framed panel: each face length x width, and set-back x girth of the panels' openings along the
/// grain. Louvre: the frame's faces without its opening; the walls of the opening without what the
/// slats' ends cover; half of each slat's surface on either face.
/// Estimated frame: each face length x width (the allowance comes on top), edges as a board's.
std::vector<Patch> patches(const Shape& shape);

}  // namespace tackfree
