#include "tackfree/takeoff/surface_takeoff.hpp"

#include "tackfree/takeoff/features.hpp"
#include "tackfree/takeoff/shapes.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <unordered_map>

namespace tackfree {
namespace {

/// The grain that a surface of a part shows. A turned side drinks like a face. A rough face drinks
/// as one whatever its pores.
Grain grain_of(const Part& part, Cut cut) {
  if (const auto* plain = std::get_if<PlainArea>(&part.shape)) return plain->grain;
  if (cut == Cut::face) {
    if (part.surface == WoodSurface::rough_sawn) return Grain::rough_face;
    return part.wood == Wood::ring_porous ? Grain::open_pored_face : Grain::face;
  }
  if (part.material == Material::plywood) return Grain::plywood_edge;
  if (part.material == Material::fibreboard) return Grain::fibreboard_edge;
  return cut == Cut::along ? Grain::long_edge : Grain::end;
}

/// The coated areas of one piece, by face and grain.
class PieceAreas {
 public:
  explicit PieceAreas(const Part& part) : part_(part) {}

  /// Faces that are not coated stay bare.
  void add(const Patch& patch, double allowance = 1.0) {
    const bool turned_down = patch.opens_both_ways && !part_.coated.contains(Face::top);
    const Face face = turned_down ? Face::bottom : patch.face;
    if (part_.coated.contains(face))
      areas_.at(at(face)).at(at(grain_of(part_, patch.cut))) += allowance * patch.area;
  }

  Area of(Face face, Grain grain) const { return areas_.at(at(face)).at(at(grain)); }

 private:
  template <class Enum>
  static std::size_t at(Enum value) {
    return static_cast<std::size_t>(value);
  }

  const Part& part_;
  std::array<std::array<Area, grain_count>, all_faces.size()> areas_{};
};

/// The factor on each face of work that is estimated from its outside; 1 for all else.
double allowance_for(const Part& part, const EstimatingAllowances& allowances) {
  const auto* frame = std::get_if<EstimatedFrame>(&part.shape);
  if (frame == nullptr) return 1.0;
  return frame->louvred ? allowances.louvred.value : allowances.framed.value;
}

/// What a mask goes round; nothing on shapes that are not round.
std::optional<Length> outside_diameter(const Shape& shape) {
  if (const auto* round = std::get_if<Round>(&shape)) return round->diameter;
  if (const auto* tube = std::get_if<Tube>(&shape)) return tube->outer;
  if (const auto* turned = std::get_if<Turned>(&shape)) return turned->diameter;
  return std::nullopt;
}

PieceAreas piece_areas(const Part& part, const EstimatingAllowances& allowances) {
  PieceAreas areas(part);
  const double allowance = allowance_for(part, allowances);
  for (const Patch& patch : patches(part.shape))
    areas.add(patch, patch.cut == Cut::face ? allowance : 1.0);
  const auto* board = std::get_if<Board>(&part.shape);
  const auto diameter = outside_diameter(part.shape);
  for (const Feature& feature : part.features) {
    if (board != nullptr)
      for (const Patch& patch : feature_patches(feature, *board)) areas.add(patch);
    if (const auto* mask = std::get_if<Mask>(&feature); mask != nullptr && diameter)
      for (const Patch& patch : mask_patches(*mask, *diameter)) areas.add(patch);
  }
  return areas;
}

Length tape_for(const Part& part) {
  const auto* board = std::get_if<Board>(&part.shape);
  const auto diameter = outside_diameter(part.shape);
  Length tape;
  for (const Feature& feature : part.features) {
    if (board != nullptr) tape += tape_on_board(feature, *board, part.coated);
    if (const auto* mask = std::get_if<Mask>(&feature); mask != nullptr && diameter)
      tape += tape_on_round(*mask, *diameter, part.coated);
  }
  return tape;
}

/// Rounding of doubles, not a surface, when a feature takes off all that is there.
constexpr Area least_surface = square_metres(1e-12);

}  // namespace

SurfaceTakeoff take_off(const Job& job) {
  std::unordered_map<std::string_view, Face> back_faces;
  for (const Batch& batch : job.batches)
    back_faces.emplace(batch.name, batch.show_side_is_bottom ? Face::top : Face::bottom);
  SurfaceTakeoff takeoff;
  for (std::size_t index = 0; index < job.parts.size(); ++index) {
    const Part& part = job.parts[index];
    const auto found = back_faces.find(part.batch);
    const Face back_face = found == back_faces.end() ? Face::bottom : found->second;
    const PieceAreas piece = piece_areas(part, job.data.allowances);
    for (const Face face : all_faces)
      for (std::size_t g = 0; g < grain_count; ++g) {
        const auto grain = static_cast<Grain>(g);
        if (const Area area = piece.of(face, grain); area > least_surface)
          takeoff.surfaces.push_back({.part = index,
                                      .face = face,
                                      .side = face == back_face ? Side::back : Side::show,
                                      .grain = grain,
                                      .area = part.quantity * area});
      }
    if (const Length tape = tape_for(part); tape > Length{})
      takeoff.masking.push_back({.part = index, .tape = part.quantity * tape});
  }
  return takeoff;
}

std::span<const Surface> surfaces_of(const SurfaceTakeoff& takeoff, std::size_t part) {
  const auto begin = std::ranges::lower_bound(takeoff.surfaces, part, {}, &Surface::part);
  const auto end = std::ranges::upper_bound(takeoff.surfaces, part, {}, &Surface::part);
  return {begin, end};
}

}  // namespace tackfree
