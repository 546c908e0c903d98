// Part: a piece to be finished: its shape, faces, features, and which of them are coated.
#pragma once

#include "tackfree/base/units.hpp"

#include <cstdint>
#include <initializer_list>
#include <string>
#include <variant>
#include <vector>

namespace tackfree {

enum class Material { solid_wood, plywood };

/// The sides of a part. A board lies with its length from left to right: top and bottom are its
/// faces, front and back its long edges, left and right its ends. A round has a side and two ends.
enum class Face : std::uint8_t { top, bottom, front, back, left, right, side };

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
  constexpr bool contains(Face f) const { return (bits_ & bit(f)) != 0; }
  constexpr bool empty() const { return bits_ == 0; }
  friend constexpr bool operator==(FaceSet, FaceSet) = default;

 private:
  static constexpr std::uint8_t bit(Face f) {
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(f));
  }
  std::uint8_t bits_ = 0;
};

/// A board or panel: length runs along the grain.
struct Board {
  Length length, width, thickness;
};

/// A leg, dowel or other cylinder: length runs along the grain.
struct Round {
  Length length, diameter;
};

using Shape = std::variant<Board, Round>;

/// A rectangular hole right through a board, from top to bottom; its length runs with the grain.
struct CutOut {
  Length length, width;
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

/// One row of the parts list, with the feature rows that belong to it.
struct Part {
  std::string name;
  Shape shape;
  Material material = Material::solid_wood;
  int quantity = 1;
  FaceSet coated;
  std::vector<CutOut> cut_outs;
  std::vector<Groove> grooves;
  std::string batch;  ///< parts that are coated together and move together
  int line = 0;       ///< line in the parts list
};

}  // namespace tackfree
