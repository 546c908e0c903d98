// Shapes: areas of a shape's sides, and what cut-outs and grooves add to or take off them.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/part.hpp"

namespace tackfree {

/// The plain area of one side of a shape, before cut-outs and grooves; 0 where the shape has no
/// such side. Board: top and bottom length x width, front and back length x thickness, left and
/// right width x thickness. Round: side pi x diameter x length, left and right pi/4 x diameter^2.
Area side_area(const Shape& shape, Face face);

/// Walls inside a board, by how they run: along the grain they are long-grain wood, across it they
/// show end grain.
struct Walls {
  Area along_grain;
  Area across_grain;
};

/// The rim of one cut-out: 2 x length x thickness along the grain, 2 x width x thickness across.
Walls rim(const CutOut& cut_out, Length thickness);

/// The opening of one cut-out, which both faces lose: length x width.
Area opening(const CutOut& cut_out);

/// Whether a groove reaches over its whole board and so runs out at both sides (to 1 um). A
/// shorter one is stopped at both ends.
bool runs_out(const Groove& groove, const Board& board);

/// The walls of one groove: 2 x length x depth beside its run and, where it is stopped,
/// 2 x width x depth at its ends. The floor is as large as the mouth.
Walls groove_walls(const Groove& groove, const Board& board);

/// The opening of one groove in its face: length x width.
Area mouth(const Groove& groove);

/// What one groove that runs out takes off each of the two sides it runs out at: width x depth.
Area outlet(const Groove& groove);

/// Tape around the mouth of one groove: 2 x length, and 2 x width more where it is stopped.
Length tape_around(const Groove& groove, const Board& board);

}  // namespace tackfree
