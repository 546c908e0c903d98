#include "tackfree/takeoff/surface_takeoff.hpp"

#include "tackfree/takeoff/shapes.hpp"

#include <array>

namespace tackfree {
namespace {

constexpr std::array all_faces{Face::top,  Face::bottom, Face::front, Face::back,
                               Face::left, Face::right,  Face::side};
constexpr std::array all_grains{Grain::face, Grain::long_edge, Grain::end, Grain::plywood_edge};

/// The grain that a side of a part shows. A turned side drinks like a face.
Grain own_grain(Material material, Face face) {
  switch (face) {
    case Face::top:
    case Face::bottom:
    case Face::side:
      return Grain::face;
    case Face::front:
    case Face::back:
      return material == Material::plywood ? Grain::plywood_edge : Grain::long_edge;
    case Face::left:
    case Face::right:
      return material == Material::plywood ? Grain::plywood_edge : Grain::end;
  }
  return Grain::face;
}

/// The coated areas of one piece, by face and grain.
class PieceAreas {
 public:
  explicit PieceAreas(const Part& part) : part_(part) {
    for (const Face face : all_faces) add(face, side_area(part.shape, face));
  }

  /// On the face's own grain; less than nothing to take off. Faces that are not coated stay bare.
  void add(Face face, Area area) { add(face, own_grain(part_.material, face), area); }

  /// Walls that open to `face`.
  void add(Face face, const Walls& walls) {
    const bool plywood = part_.material == Material::plywood;
    add(face, plywood ? Grain::plywood_edge : Grain::long_edge, walls.along_grain);
    add(face, plywood ? Grain::plywood_edge : Grain::end, walls.across_grain);
  }

  Area of(Face face, Grain grain) const { return areas_.at(at(face)).at(at(grain)); }

 private:
  template <class Enum>
  static std::size_t at(Enum value) {
    return static_cast<std::size_t>(value);
  }
  void add(Face face, Grain grain, Area area) {
    if (part_.coated.contains(face)) areas_.at(at(face)).at(at(grain)) += area;
  }

  const Part& part_;
  std::array<std::array<Area, grain_count>, all_faces.size()> areas_{};
};

Walls operator*(int count, const Walls& walls) {
  return {.along_grain = count * walls.along_grain, .across_grain = count * walls.across_grain};
}

void cut_out(PieceAreas& areas, const CutOut& hole, const Part& part, const Board& board) {
  const Area lost = hole.count * opening(hole);
  areas.add(Face::top, -lost);
  areas.add(Face::bottom, -lost);
  if (!hole.rim_coated) return;
  const Face opens_to = part.coated.contains(Face::top) ? Face::top : Face::bottom;
  areas.add(opens_to, hole.count * rim(hole, board.thickness));
}

/// A masked groove takes off its mouth and nothing else: the few square centimetres of its outlets
/// stay in, on the ample side.
void groove_in(PieceAreas& areas, const Groove& groove, const Board& board) {
  if (groove.masked) {
    areas.add(groove.face, -(groove.count * mouth(groove)));
    return;
  }
  areas.add(groove.face, groove.count * groove_walls(groove, board));
  if (!runs_out(groove, board)) return;
  const bool with_length = groove.run == Groove::Run::with_length;
  const Area lost = groove.count * outlet(groove);
  areas.add(with_length ? Face::left : Face::front, -lost);
  areas.add(with_length ? Face::right : Face::back, -lost);
}

/// Tape for one piece. A face that is not coated needs none.
Length tape_for(const Part& part, const Board& board) {
  Length tape;
  for (const Groove& groove : part.grooves)
    if (groove.masked && part.coated.contains(groove.face))
      tape += groove.count * tape_around(groove, board);
  return tape;
}

PieceAreas piece_areas(const Part& part) {
  PieceAreas areas(part);
  if (const auto* board = std::get_if<Board>(&part.shape)) {
    for (const CutOut& hole : part.cut_outs) cut_out(areas, hole, part, *board);
    for (const Groove& groove : part.grooves) groove_in(areas, groove, *board);
  }
  return areas;
}

}  // namespace

SurfaceTakeoff take_off(const Job& job) {
  SurfaceTakeoff takeoff;
  for (std::size_t index = 0; index < job.parts.size(); ++index) {
    const Part& part = job.parts[index];
    const Batch* batch = find_named(job.batches, part.batch);
    const Face back_face =
        batch != nullptr && batch->show_side_is_bottom ? Face::top : Face::bottom;
    const PieceAreas piece = piece_areas(part);
    for (const Face face : all_faces)
      for (const Grain grain : all_grains)
        if (const Area area = piece.of(face, grain); area > Area{})
          takeoff.surfaces.push_back({.part = index,
                                      .face = face,
                                      .side = face == back_face ? Side::back : Side::show,
                                      .grain = grain,
                                      .area = part.quantity * area});
    if (const auto* board = std::get_if<Board>(&part.shape))
      if (const Length tape = tape_for(part, *board); tape > Length{})
        takeoff.masking.push_back({.part = index, .tape = part.quantity * tape});
  }
  return takeoff;
}

}  // namespace tackfree
