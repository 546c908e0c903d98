#include "tackfree/takeoff/features.hpp"

#include <numbers>
#include <utility>

namespace tackfree {
namespace {

using Patches = std::vector<Patch>;

void take_off_faces(Patches& patches, Area area) {
  for (const Face face : {Face::top, Face::bottom})
    patches.push_back({.face = face, .cut = Cut::face, .area = -area});
}

Patch through_wall(Cut cut, Area area) {
  return {.face = Face::top, .cut = cut, .area = area, .opens_both_ways = true};
}

/// The two sides at which a groove or rebate with this run comes out.
std::pair<Face, Face> outlets(Groove::Run run) {
  return run == Groove::Run::with_length ? std::pair(Face::left, Face::right)
                                         : std::pair(Face::front, Face::back);
}

void take_outlets(Patches& patches, Groove::Run run, Area each) {
  const auto [one, other] = outlets(run);
  for (const Face face : {one, other})
    patches.push_back({.face = face, .cut = own_cut(face), .area = -each});
}

Groove::Run run_of(const Rebate& rebate) {
  return own_cut(rebate.along) == Cut::along ? Groove::Run::with_length : Groove::Run::with_width;
}

Patches of(const CutOut& hole, const Board& board) {
  Patches patches;
  take_off_faces(patches, hole.count * (hole.length * hole.width));
  if (hole.rim_coated) {
    patches.push_back(through_wall(Cut::along, 2 * hole.count * (hole.length * board.thickness)));
    patches.push_back(through_wall(Cut::across, 2 * hole.count * (hole.width * board.thickness)));
  }
  return patches;
}

/// A bore turns half of its wall to the ends of the fibres.
Patches of(const Hole& hole, const Board& board) {
  Patches patches;
  take_off_faces(patches, hole.count * std::numbers::pi / 4 * (hole.diameter * hole.diameter));
  const Area half_wall = hole.count * std::numbers::pi / 2 * (hole.diameter * board.thickness);
  if (hole.rim_coated)
    for (const Cut cut : {Cut::along, Cut::across}) patches.push_back(through_wall(cut, half_wall));
  return patches;
}

Patches of(const Groove& groove, const Board& board) {
  if (groove.masked)
    return {{.face = groove.face,
             .cut = Cut::face,
             .area = -(groove.count * (groove.length * groove.width))}};
  const bool with_length = groove.run == Groove::Run::with_length;
  const Area at_ends = groove.count * (groove.width * groove.depth);
  Patches patches{{.face = groove.face,
                   .cut = with_length ? Cut::along : Cut::across,
                   .area = 2 * groove.count * (groove.length * groove.depth)}};
  if (runs_out(groove.length, side_size(board, groove.face, groove.run).run))
    take_outlets(patches, groove.run, at_ends);
  else
    patches.push_back(
        {.face = groove.face, .cut = with_length ? Cut::across : Cut::along, .area = 2 * at_ends});
  return patches;
}

Patches of(const Rebate& rebate, const Board& board) {
  if (rebate.masked)
    return {{.face = rebate.face, .cut = Cut::face, .area = -(rebate.length * rebate.width)},
            {.face = rebate.along,
             .cut = own_cut(rebate.along),
             .area = -(rebate.length * rebate.depth)}};
  Patches patches;
  const Area at_end = rebate.width * rebate.depth;
  if (runs_out(rebate.length, side_size(board, rebate.along).run))
    take_outlets(patches, run_of(rebate), at_end);
  else
    patches.push_back({.face = rebate.face,
                       .cut = run_of(rebate) == Groove::Run::with_length ? Cut::across : Cut::along,
                       .area = 2 * at_end});
  return patches;
}

Patches of(const Moulding& moulding, const Board& board) {
  return {{.face = moulding.along,
           .cut = own_cut(moulding.along),
           .area = moulding.length * (moulding.girth - board.thickness)}};
}

Patches of(const Mask& mask, const Board&) {
  return {{.face = mask.face,
           .cut = own_cut(mask.face),
           .area = -(mask.count * (mask.length * mask.width))}};
}

Length round_a_strip(Length length, Length width, Length run) {
  return runs_out(length, run) ? 2 * length : 2 * (length + width);
}

}  // namespace

bool runs_out(Length length, Length run) {
  // The same length may have been written in inches once and in millimetres once.
  constexpr Length written_twice = millimetres(0.001);
  return length >= run - written_twice;
}

std::vector<Patch> feature_patches(const Feature& feature, const Board& board) {
  return std::visit([&](const auto& known) { return of(known, board); }, feature);
}

std::vector<Patch> mask_patches(const Mask& mask, Length diameter) {
  return {{.face = Face::side,
           .cut = Cut::face,
           .area = -(mask.count * std::numbers::pi * (diameter * mask.length))}};
}

Length tape_on_board(const Feature& feature, const Board& board, const FaceSet& coated) {
  if (const auto* groove = std::get_if<Groove>(&feature);
      groove != nullptr && groove->masked && coated.contains(groove->face))
    return groove->count * round_a_strip(groove->length, groove->width,
                                         side_size(board, groove->face, groove->run).run);
  if (const auto* rebate = std::get_if<Rebate>(&feature);
      rebate != nullptr && rebate->masked &&
      (coated.contains(rebate->face) || coated.contains(rebate->along)))
    return round_a_strip(rebate->length, rebate->width + rebate->depth,
                         side_size(board, rebate->along).run);
  if (const auto* mask = std::get_if<Mask>(&feature);
      mask != nullptr && coated.contains(mask->face))
    return mask->count *
           round_a_strip(mask->length, mask->width, side_size(board, mask->face, mask->run).run);
  return {};
}

Length tape_on_round(const Mask& mask, Length diameter, const FaceSet& coated) {
  return coated.contains(Face::side) ? mask.count * std::numbers::pi * diameter : Length{};
}

}  // namespace tackfree
