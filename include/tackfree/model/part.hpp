// Part: a piece to be finished: its shape, faces, features, and which of them are coated.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/finishing_data.hpp"

#include <array>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <variant>
#include <vector>

namespace tackfree {

enum class Material { solid_wood, plywood, fibreboard };

/// Ring-porous wood (oak, ash, elm) has open pores that drink more on its faces.
enum class Wood { close_grained, ring_porous };

enum class WoodSurface { planed, rough_sawn };

/// The sides of a part. A board lies with its length from left to right: top and bottom are its
/// faces, front and back its long edges, left and right its ends. What is round has a side and two
/// ends, a tube an inside too.
enum class Face : std::uint8_t { top, bottom, front, back, left, right, side, inside };
inline constexpr std::array all_faces{Face::top,  Face::bottom, Face::front, Face::back,
                                      Face::left, Face::right,  Face::side,  Face::inside};

/// The half of a part that is coated in one go. Edges, ends and rounds go with the show side.
enum class Side { back, show, both };

/// A set of sides.
class FaceSet {
 public:
  constexpr FaceSet() = default;
  constexpr FaceSet(std::initializer_list<Face> faces) {
    for (Face f : faces) add(f);
  }
  constexpr void add(Face f) { bits_ |= bit(f); }
  constexpr void add(FaceSet more) { bits_ |= more.bits_; }
  constexpr bool contains(Face f) const { return (bits_ & bit(f)) != 0; }
  constexpr bool empty() const { return bits_ == 0; }
  friend constexpr bool operator==(FaceSet, FaceSet) = default;

 private:
  static constexpr std::uint8_t bit(Face f) {
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(f));
  }
  std::uint8_t bits_ = 0;
};

/// A board, or a sheet of plywood or fibreboard: length runs along the grain.
struct Board {
  Length length, width, thickness;
};

/// A leg, dowel or other cylinder: length runs along the grain.
struct Round {
  Length length, diameter;
};

/// A round with a bore from end to end.
struct Tube {
  Length length, outer, inner;  ///< diameters, inner less than outer
};

/// A round turned to a profile, by its greatest diameter. The profile factor is the area of its
/// side over that of the cylinder around it: under 1 for a taper, over 1 for beads and coves.
struct Turned {
  Length length, diameter;
  double profile_factor = 1.0;
};

/// The outer sizes of a frame with its stiles along the length and its rails between them, one at
/// each end: length > 2 rails, width > 2 stiles.
struct Frame {
  Length length, width, thickness;
  Length stile_width, rail_width;
};

/// A frame with `panels` equal panels, one after another along its length, a rail between each two.
struct FramedPanel {
  Frame frame;
  int panels = 1;
  Length set_back_top, set_back_bottom;  ///< from the frame's face down to the panel; 0 is flush
};

/// A frame with slats from stile to stile, housed in the stiles.
struct Louvre {
  Frame frame;
  int slats = 1;
  Length slat_width, slat_thickness;  ///< of the slat itself, however it is tilted
};

/// Framed or louvred work whose true sizes are not known: its outside, with a published allowance
/// on each face.
struct EstimatedFrame {
  Length length, width, thickness;
  bool louvred = false;
};

/// An area that somebody has measured already; each coated face has all of it.
struct PlainArea {
  Area area;
  Grain grain = Grain::face;
};

using Shape =
    std::variant<Board, Round, Tube, Turned, FramedPanel, Louvre, EstimatedFrame, PlainArea>;

/// A rectangular hole right through a board, from top to bottom; its length runs with the grain.
struct CutOut {
  Length length, width;
  int count = 1;
  bool rim_coated = true;
};

/// A round hole right through a board, from top to bottom.
struct Hole {
  Length diameter;
  int count = 1;
  bool rim_coated = true;
};

/// A groove with a flat floor in the top or bottom of a board.
struct Groove {
  enum class Run { with_length, with_width };
  Face face = Face::top;
  Run run = Run::with_length;
  Length length, width, depth;
  int count = 1;
  bool masked = false;  ///< kept free of finish, for a glue joint
};

/// A step cut out of an arris: along the `along` side of a board (front, back, left or right), in
/// its top or bottom. As long as the side it runs out; a shorter one is stopped at both ends.
struct Rebate {
  Face face = Face::top;
  Face along = Face::front;
  Length length, width, depth;
  bool masked = false;
};

/// A profile along one edge or end of a board; `girth` is its developed width from top to bottom.
struct Moulding {
  Face along = Face::front;
  Length length, girth;
};

/// A strip of one side that is kept free of finish. On a board its length runs with the side's
/// longer run (or with `run` on top and bottom); on a round it goes all round and width is unused.
struct Mask {
  Face face = Face::top;
  Groove::Run run = Groove::Run::with_length;
  Length length, width;
  int count = 1;
};

/// How far a side of a board runs, and its breadth across that: length and width of top and bottom
/// (with the width the other way round), length and thickness of front and back, width and
/// thickness of left and right.
struct SideSize {
  Length run, across;
};
constexpr SideSize side_size(const Board& board, Face side,
                             Groove::Run run = Groove::Run::with_length) {
  if (side == Face::front || side == Face::back) return {board.length, board.thickness};
  if (side == Face::left || side == Face::right) return {board.width, board.thickness};
  if (run == Groove::Run::with_length) return {board.length, board.width};
  return {board.width, board.length};
}

using Feature = std::variant<CutOut, Hole, Groove, Rebate, Moulding, Mask>;

/// One row of the parts list, with the feature rows that belong to it.
struct Part {
  std::string name;
  Shape shape;
  Material material = Material::solid_wood;
  Wood wood = Wood::close_grained;
  WoodSurface surface = WoodSurface::planed;
  int quantity = 1;
  FaceSet coated;
  std::vector<Feature> features;
  std::string batch;  ///< parts that are coated together and move together
  int line = 0;       ///< line in the parts list
};

}  // namespace tackfree
