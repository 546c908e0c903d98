#include "tackfree/takeoff/shapes.hpp"

#include <numbers>

namespace tackfree {
namespace {

Area area_of(const Board& board, Face face) {
  switch (face) {
    case Face::top:
    case Face::bottom:
      return board.length * board.width;
    case Face::front:
    case Face::back:
      return board.length * board.thickness;
    case Face::left:
    case Face::right:
      return board.width * board.thickness;
    case Face::side:
      break;
  }
  return {};
}

Area area_of(const Round& round, Face face) {
  if (face == Face::side) return std::numbers::pi * (round.diameter * round.length);
  if (face == Face::left || face == Face::right)
    return std::numbers::pi / 4 * (round.diameter * round.diameter);
  return {};
}

}  // namespace

Area side_area(const Shape& shape, Face face) {
  return std::visit([face](const auto& known) { return area_of(known, face); }, shape);
}

Walls rim(const CutOut& cut_out, Length thickness) {
  return {.along_grain = 2 * (cut_out.length * thickness),
          .across_grain = 2 * (cut_out.width * thickness)};
}

Area opening(const CutOut& cut_out) { return cut_out.length * cut_out.width; }

bool runs_out(const Groove& groove, const Board& board) {
  // The same length may have been written in inches once and in millimetres once.
  constexpr Length written_twice = millimetres(0.001);
  const Length reach = groove.run == Groove::Run::with_length ? board.length : board.width;
  return groove.length >= reach - written_twice;
}

Walls groove_walls(const Groove& groove, const Board& board) {
  const Area beside = 2 * (groove.length * groove.depth);
  const Area at_ends = runs_out(groove, board) ? Area{} : 2 * (groove.width * groove.depth);
  if (groove.run == Groove::Run::with_length)
    return {.along_grain = beside, .across_grain = at_ends};
  return {.along_grain = at_ends, .across_grain = beside};
}

Area mouth(const Groove& groove) { return groove.length * groove.width; }

Area outlet(const Groove& groove) { return groove.width * groove.depth; }

Length tape_around(const Groove& groove, const Board& board) {
  const Length beside = 2 * groove.length;
  return runs_out(groove, board) ? beside : beside + 2 * groove.width;
}

}  // namespace tackfree
