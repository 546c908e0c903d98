#include "tackfree/input/part_shape_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/names_of.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

enum ShapeKind : std::size_t { board, sheet, round_part, tube, turned, framed, louvre, area };

/// A word of the `coat` column and the sides it stands for.
struct CoatWord {
  std::string_view word;
  FaceSet faces;
};
constexpr FaceSet board_faces{Face::top,  Face::bottom, Face::front,
                              Face::back, Face::left,   Face::right};
constexpr FaceSet round_faces{Face::side, Face::left, Face::right};
constexpr FaceSet tube_faces{Face::side, Face::inside, Face::left, Face::right};
constexpr std::array<CoatWord, 10> board_words{{{"all", board_faces},
                                                {"faces", {Face::top, Face::bottom}},
                                                {"edges", {Face::front, Face::back}},
                                                {"ends", {Face::left, Face::right}},
                                                {"top", {Face::top}},
                                                {"bottom", {Face::bottom}},
                                                {"front", {Face::front}},
                                                {"back", {Face::back}},
                                                {"left", {Face::left}},
                                                {"right", {Face::right}}}};
constexpr std::array<CoatWord, 5> round_words{{{"all", round_faces},
                                               {"side", {Face::side}},
                                               {"ends", {Face::left, Face::right}},
                                               {"left", {Face::left}},
                                               {"right", {Face::right}}}};
constexpr std::array<CoatWord, 6> tube_words{{{"all", tube_faces},
                                              {"outside", {Face::side}},
                                              {"inside", {Face::inside}},
                                              {"ends", {Face::left, Face::right}},
                                              {"left", {Face::left}},
                                              {"right", {Face::right}}}};
constexpr std::array<CoatWord, 3> area_words{
    {{"faces", {Face::top, Face::bottom}}, {"top", {Face::top}}, {"bottom", {Face::bottom}}}};

std::span<const CoatWord> coat_words(std::size_t kind) {
  if (kind == area) return area_words;
  if (kind == tube) return tube_words;
  return kind == round_part || kind == turned ? std::span<const CoatWord>(round_words)
                                              : std::span<const CoatWord>(board_words);
}

/// Sides named in words, between blanks or `+`. None is guessed: an underside or an inside that
/// nobody asked for would be litres bought, one forgotten a board that cups.
FaceSet coated_faces(PartsRow& row, std::span<const CoatWord> words, std::string_view kind) {
  const std::string found = small_letters(row.text("coat"));
  const auto names = names_of(words, &CoatWord::word);
  FaceSet faces;
  std::string_view rest = found;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find_first_of(" +,\t"), rest.size());
    const std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (word.empty()) continue;
    const auto known = std::ranges::find(words, word, &CoatWord::word);
    if (known != words.end()) {
      faces.add(known->faces);
      continue;
    }
    const auto near = nearest_name(word, names);
    row.report("coat", fmt::format("wanted sides of a {}: {}", kind, fmt::join(names, ", ")),
               near ? fmt::format("did you mean \"{}\"?", *near) : "");
    return faces;
  }
  if (faces.empty())
    row.report("coat",
               fmt::format("is empty; wanted the sides to coat: {}", fmt::join(names, ", ")),
               "undersides and insides are not guessed");
  return faces;
}

void read_material(PartsRow& row, std::size_t kind, Part& part) {
  constexpr std::array<std::string_view, 3> all{"solid", "plywood", "fibreboard"};
  constexpr std::array<std::string_view, 2> woods{"close", "ring_porous"};
  constexpr std::array<std::string_view, 2> surfaces{"planed", "rough"};
  if (kind == area) return;
  if (kind == sheet) {
    if (row.needed_text("material", "plywood or fibreboard").empty()) return;
    part.material = static_cast<Material>(row.word("material", std::span(all).subspan(1), 0) + 1);
  } else {
    const bool solid_only = kind == framed || kind == louvre;
    const std::span<const std::string_view> known = std::span(all).first(solid_only ? 1 : 3);
    part.material = static_cast<Material>(row.word("material", known, 0));
  }
  part.wood = static_cast<Wood>(row.word("wood", woods, 0));
  part.surface = static_cast<WoodSurface>(row.word("surface", surfaces, 0));
}

Tube read_tube(PartsRow& row) {
  const Tube tube{.length = row.needed_length("length"),
                  .outer = row.needed_length("diameter"),
                  .inner = row.needed_length("inner")};
  if (row.good() && tube.inner >= tube.outer)
    row.report("inner", "wanted less than the diameter: a wall must be left");
  return tube;
}

/// A size of framed work, or the other way to take its area.
Length frame_size(PartsRow& row, std::string_view column) {
  if (!row.text(column).empty()) return row.needed_length(column);
  row.report(column, "is empty; wanted a length, such as 3 in or 75 mm",
             "sizes not known? \"yes\" under estimate takes a published allowance instead");
  return {};
}

Frame read_frame(PartsRow& row) {
  const Frame frame{.length = row.needed_length("length"),
                    .width = row.needed_length("width"),
                    .thickness = row.needed_length("thickness"),
                    .stile_width = frame_size(row, "stile_width"),
                    .rail_width = frame_size(row, "rail_width")};
  if (row.good() && 2 * frame.stile_width >= frame.width)
    row.report("stile_width", "wanted less than half the width: an opening must be left");
  return frame;
}

FramedPanel read_framed(PartsRow& row) {
  FramedPanel door{.frame = read_frame(row),
                   .panels = row.whole("panels"),
                   .set_back_top = row.length("set_back_top").value_or(Length{}),
                   .set_back_bottom = row.length("set_back_bottom").value_or(Length{})};
  if (!row.good()) return door;
  if ((door.panels + 1) * door.frame.rail_width >= door.frame.length)
    row.report("rail_width", fmt::format("wanted less: {} rails of it leave no opening in the "
                                         "length",
                                         door.panels + 1));
  if (door.set_back_top + door.set_back_bottom >= door.frame.thickness)
    row.report(row.text("set_back_top").empty() ? "set_back_bottom" : "set_back_top",
               "wanted less: both set-backs together leave no panel in the thickness");
  return door;
}

Louvre read_louvre(PartsRow& row) {
  Louvre louvre{.frame = read_frame(row)};
  if (!row.needed_text("slats", "how many slats it has").empty()) louvre.slats = row.whole("slats");
  louvre.slat_width = frame_size(row, "slat_width");
  louvre.slat_thickness = frame_size(row, "slat_thickness");
  if (!row.good()) return louvre;
  const Length clear = louvre.frame.length - 2 * louvre.frame.rail_width;
  if (clear <= Length{})
    row.report("rail_width", "wanted less than half the length: an opening must be left");
  else if (louvre.slats * (louvre.slat_width * louvre.slat_thickness) >
           clear * louvre.frame.thickness)
    row.report("slats", "wanted slats whose ends find room in the stiles between the rails");
  return louvre;
}

EstimatedFrame read_estimated(PartsRow& row, std::size_t kind) {
  return {.length = row.needed_length("length"),
          .width = row.needed_length("width"),
          .thickness = row.needed_length("thickness"),
          .louvred = kind == louvre};
}

Shape read_shape(PartsRow& row, std::size_t kind) {
  switch (kind) {
    case round_part:
      return Round{row.needed_length("length"), row.needed_length("diameter")};
    case tube:
      return read_tube(row);
    case turned:
      return Turned{row.needed_length("length"), row.needed_length("diameter"),
                    row.needed_number("profile_factor", 0.2, 5)};
    case framed:
      if (row.yes_no("estimate", false)) return read_estimated(row, kind);
      return read_framed(row);
    case louvre:
      if (row.yes_no("estimate", false)) return read_estimated(row, kind);
      return read_louvre(row);
    case area:
      return PlainArea{row.needed_area("area"),
                       static_cast<Grain>(row.word("grain", grain_keys, 0))};
    default:
      return Board{row.needed_length("length"), row.needed_length("width"),
                   row.needed_length("thickness")};
  }
}

}  // namespace

Part read_part(PartsRow& row, std::size_t kind) {
  Part part;
  part.line = row.line();
  part.name = row.needed_text("part", "the part's name");
  part.quantity = row.quantity();
  part.batch = row.needed_text("batch", "the name of a batch of the job");
  read_material(row, kind, part);
  part.coated = coated_faces(row, coat_words(kind), part_kinds.at(kind));
  part.shape = read_shape(row, kind);
  row.refuse_unused(part_kinds.at(kind));
  return part;
}

}  // namespace tackfree
