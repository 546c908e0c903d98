#include "tackfree/takeoff/shapes.hpp"

#include <array>
#include <numbers>

namespace tackfree {
namespace {

using Patches = std::vector<Patch>;

Area circle(Length diameter) { return std::numbers::pi / 4 * (diameter * diameter); }

Area cylinder(Length diameter, Length length) { return std::numbers::pi * (diameter * length); }

/// Two sides that are alike.
using Pair = std::array<Face, 2>;
constexpr Pair faces{Face::top, Face::bottom};
constexpr Pair edges{Face::front, Face::back};
constexpr Pair ends{Face::left, Face::right};

void add_pair(Patches& patches, const Pair& pair, Cut cut, Area area) {
  for (const Face face : pair) patches.push_back({.face = face, .cut = cut, .area = area});
}

void add_ends(Patches& patches, Area area) { add_pair(patches, ends, Cut::across, area); }

/// Stile edges in front and at the back; at left and right rails between the ends of the stiles.
void add_frame_edges(Patches& patches, const Frame& frame) {
  add_pair(patches, edges, Cut::along, frame.length * frame.thickness);
  add_ends(patches, 2 * (frame.stile_width * frame.thickness));
  add_pair(patches, ends, Cut::along, (frame.width - 2 * frame.stile_width) * frame.thickness);
}

Patches of(const Board& board) {
  Patches patches;
  add_pair(patches, faces, Cut::face, board.length * board.width);
  add_pair(patches, edges, Cut::along, board.length * board.thickness);
  add_ends(patches, board.width * board.thickness);
  return patches;
}

Patches of(const Round& round) {
  Patches patches{{.face = Face::side, .area = cylinder(round.diameter, round.length)}};
  add_ends(patches, circle(round.diameter));
  return patches;
}

Patches of(const Tube& tube) {
  Patches patches{{.face = Face::side, .area = cylinder(tube.outer, tube.length)},
                  {.face = Face::inside, .area = cylinder(tube.inner, tube.length)}};
  add_ends(patches, circle(tube.outer) - circle(tube.inner));
  return patches;
}

Patches of(const Turned& turned) {
  Patches patches = of(Round{.length = turned.length, .diameter = turned.diameter});
  patches.front().area = turned.profile_factor * patches.front().area;
  return patches;
}

Patches of(const FramedPanel& door) {
  const Frame& frame = door.frame;
  Patches patches;
  add_pair(patches, faces, Cut::face, frame.length * frame.width);
  const Length girth = 2 * (frame.length - (door.panels + 1) * frame.rail_width) +
                       2 * door.panels * (frame.width - 2 * frame.stile_width);
  // Stiles and rails both turn their long grain to the panel.
  patches.push_back({.face = Face::top, .cut = Cut::along, .area = girth * door.set_back_top});
  patches.push_back(
      {.face = Face::bottom, .cut = Cut::along, .area = girth * door.set_back_bottom});
  add_frame_edges(patches, frame);
  return patches;
}

Patches of(const Louvre& louvre) {
  const Frame& frame = louvre.frame;
  const Length clear_length = frame.length - 2 * frame.rail_width;
  const Length clear_width = frame.width - 2 * frame.stile_width;
  const Area slat_ends = 2 * louvre.slats * (louvre.slat_width * louvre.slat_thickness);
  Patches patches;
  add_pair(patches, faces, Cut::face, frame.length * frame.width - clear_length * clear_width);
  patches.push_back({.face = Face::top,
                     .cut = Cut::along,
                     .area = 2 * ((clear_length + clear_width) * frame.thickness) - slat_ends,
                     .opens_both_ways = true});
  add_pair(patches, faces, Cut::face, louvre.slats * (clear_width * louvre.slat_width));
  add_pair(patches, faces, Cut::along, louvre.slats * (clear_width * louvre.slat_thickness));
  add_frame_edges(patches, frame);
  return patches;
}

Patches of(const EstimatedFrame& frame) {
  return of(Board{.length = frame.length, .width = frame.width, .thickness = frame.thickness});
}

Patches of(const PlainArea& plain) {
  Patches patches;
  add_pair(patches, faces, Cut::face, plain.area);
  return patches;
}

}  // namespace

Cut own_cut(Face face) {
  if (face == Face::front || face == Face::back) return Cut::along;
  return face == Face::left || face == Face::right ? Cut::across : Cut::face;
}

std::vector<Patch> patches(const Shape& shape) {
  return std::visit([](const auto& known) { return of(known); }, shape);
}

}  // namespace tackfree
