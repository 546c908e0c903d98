#include "tackfree/input/parts_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/base/text_file.hpp"
#include "tackfree/input/names_of.hpp"
#include "tackfree/input/parts_row.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::array<std::string_view, 4> kinds{"board", "round", "cut-out", "groove"};
enum Kind : std::size_t { board, round_part, cut_out, groove };

/// A word of the `coat` column and the sides it stands for.
struct CoatWord {
  std::string_view word;
  FaceSet faces;
};
constexpr FaceSet board_faces{Face::top,  Face::bottom, Face::front,
                              Face::back, Face::left,   Face::right};
constexpr FaceSet round_faces{Face::side, Face::left, Face::right};
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

/// Sides named in words, between spaces or `+`; all of them when nothing is said.
FaceSet coated_faces(PartsRow& row, std::span<const CoatWord> words, std::string_view kind) {
  const std::string found = row.text("coat");
  FaceSet faces;
  std::string_view rest = found;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find_first_of(" +,\t"), rest.size());
    const std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (word.empty()) continue;
    bool known = false;
    for (const CoatWord& each : words) {
      if (each.word != word) continue;
      known = true;
      for (const Face face :
           {Face::top, Face::bottom, Face::front, Face::back, Face::left, Face::right, Face::side})
        if (each.faces.contains(face)) faces.add(face);
    }
    if (known) continue;
    const auto names = names_of(words, &CoatWord::word);
    const auto near = nearest_name(word, names);
    row.report("coat", fmt::format("wanted sides of a {}: {}", kind, fmt::join(names, ", ")),
               near ? fmt::format("did you mean \"{}\"?", *near) : "");
    return faces;
  }
  return faces.empty() ? words.front().faces : faces;
}

Part read_part(PartsRow& row, Kind kind) {
  Part part;
  part.line = row.line();
  part.name = row.needed_text("part", "the part's name");
  part.quantity = row.quantity();
  part.batch = row.needed_text("batch", "the name of a batch of the job");
  constexpr std::array<std::string_view, 2> materials{"solid", "plywood"};
  if (row.word("material", materials, 0) == 1) part.material = Material::plywood;
  if (kind == board) {
    part.coated = coated_faces(row, board_words, "board");
    part.shape = Board{row.needed_length("length"), row.needed_length("width"),
                       row.needed_length("thickness")};
  } else {
    part.coated = coated_faces(row, round_words, "round");
    part.shape = Round{row.needed_length("length"), row.needed_length("diameter")};
  }
  row.refuse_unused(kinds[kind]);
  return part;
}

/// A cut-out or groove row before it is known to fit its part.
struct Feature {
  Kind kind = cut_out;
  CutOut opening;
  Groove channel;
  bool full_length = false;  ///< the groove runs from side to side
  std::string part;
};

Feature read_feature(PartsRow& row, Kind kind) {
  Feature feature;
  feature.kind = kind;
  feature.part = row.needed_text("part", "the name of the board it is in");
  row.text("batch");
  if (!row.text("batch").empty())
    row.report("batch",
               fmt::format("wanted this field empty: a {} goes with its part", kinds[kind]));
  if (kind == cut_out) {
    feature.opening = {.length = row.needed_length("length"),
                       .width = row.needed_length("width"),
                       .count = row.quantity(),
                       .rim_coated = row.yes_no("rim", true)};
  } else {
    constexpr std::array<std::string_view, 2> faces{"top", "bottom"};
    constexpr std::array<std::string_view, 2> runs{"length", "width"};
    Groove& channel = feature.channel;
    channel.face = row.word("face", faces, 0) == 0 ? Face::top : Face::bottom;
    channel.run =
        row.word("run", runs, 0) == 0 ? Groove::Run::with_length : Groove::Run::with_width;
    feature.full_length = row.text("length").empty();
    channel.length = row.length("length").value_or(Length{});
    channel.width = row.needed_length("width");
    channel.depth = row.needed_length("depth");
    channel.count = row.quantity();
    channel.masked = row.yes_no("masked", false);
  }
  row.refuse_unused(kinds[kind]);
  return feature;
}

std::string in_mm(Length length) { return fmt::format("{:.4g} mm", length.in(millimetres)); }

void fit_cut_out(PartsRow& row, const CutOut& opening, const Board& in, Part& part) {
  if (opening.length >= in.length)
    row.report("length", fmt::format("wanted less than the board's length, {}: a rim must be left",
                                     in_mm(in.length)));
  if (opening.width >= in.width)
    row.report("width", fmt::format("wanted less than the board's width, {}: a rim must be left",
                                    in_mm(in.width)));
  if (row.good()) part.cut_outs.push_back(opening);
}

void fit_groove(PartsRow& row, Groove channel, bool full_length, const Board& in, Part& part) {
  const bool along = channel.run == Groove::Run::with_length;
  const Length run = along ? in.length : in.width;
  const Length across = along ? in.width : in.length;
  if (full_length) channel.length = run;
  if (channel.length > run)
    row.report("length", fmt::format("wanted no more than the run of the board, {}", in_mm(run)));
  if (channel.width > across)
    row.report("width",
               fmt::format("wanted no more than the board is wide there, {}", in_mm(across)));
  if (channel.depth >= in.thickness)
    row.report("depth", fmt::format("wanted less than the board's thickness, {}; what goes right "
                                    "through is a cut-out",
                                    in_mm(in.thickness)));
  if (row.good()) part.grooves.push_back(channel);
}

/// The places of the parts in the list, by name.
using PartPlaces = std::map<std::string, std::size_t, std::less<>>;

void fit_feature(PartsRow& row, const Feature& feature, const PartPlaces& places,
                 std::vector<Part>& parts) {
  const auto place = places.find(feature.part);
  if (place == places.end()) {
    row.report("part", "wanted the name of a part in this list",
               name_hint(feature.part, names_of(parts, &Part::name)));
    return;
  }
  Part& part = parts[place->second];
  const Board* in = std::get_if<Board>(&part.shape);
  if (in == nullptr) {
    row.report("part", fmt::format("wanted a board: a {} in a round is not known here",
                                   kinds[feature.kind]));
    return;
  }
  // A board whose own sizes are wrong has been reported; nothing can be said about what fits it.
  if (std::min({in->length, in->width, in->thickness}) <= Length{}) return;
  if (feature.kind == cut_out)
    fit_cut_out(row, feature.opening, *in, part);
  else
    fit_groove(row, feature.channel, feature.full_length, *in, part);
}

/// Reports faces that hold less area than the cut-outs and grooves in them.
void check_faces(const Part& part, const std::string& file, Problems& problems) {
  const Board* in = std::get_if<Board>(&part.shape);
  if (in == nullptr) return;
  const Area face_area = in->length * in->width;
  for (const Face face : {Face::top, Face::bottom}) {
    Area taken;
    for (const CutOut& each : part.cut_outs) taken += each.length * each.width * each.count;
    for (const Groove& each : part.grooves)
      if (each.face == face) taken += each.length * each.width * each.count;
    if (taken <= face_area * (1 + 1e-9)) continue;
    problems.push_back(
        {.file = file,
         .line = part.line,
         .key = part.name,
         .found = fmt::format("{:.4g} m2 of cut-outs and grooves", taken.in(square_metres)),
         .wanted = fmt::format("wanted no more than its {}, {:.4g} m2",
                               face == Face::top ? "top" : "bottom", face_area.in(square_metres)),
         .hint = "look at the quantities of its cut-outs and grooves"});
    return;
  }
}

/// A feature row waits here until every part is known.
struct WaitingFeature {
  PartsRow row;
  Feature feature;
};

}  // namespace

std::vector<Part> parse_parts(std::string_view text, const std::string& file, Problems& problems) {
  std::vector<Part> parts;
  const auto document = parse_csv(text, file, problems);
  if (!document) return parts;
  const auto columns = PartsColumns::in(*document, file, problems);
  if (!columns) return parts;
  const std::size_t before = problems.size();
  PartPlaces places;
  std::vector<WaitingFeature> features;
  for (const CsvRow& fields : document->rows) {
    if (problems.size() - before > most_listed_mistakes) {
      problems.push_back(
          {.file = file, .line = fields.line, .wanted = "has too many mistakes; mend these first"});
      break;
    }
    PartsRow row(fields, *columns, file, problems);
    if (row.needed_text("kind", "board, round, cut-out or groove").empty()) continue;
    const std::size_t kind = row.word("kind", kinds, kinds.size());
    if (kind == kinds.size()) continue;
    if (kind == cut_out || kind == groove) {
      Feature feature = read_feature(row, static_cast<Kind>(kind));
      if (row.good()) features.push_back({std::move(row), std::move(feature)});
      continue;
    }
    Part part = read_part(row, static_cast<Kind>(kind));
    const auto [first, is_new] = places.emplace(part.name, parts.size());
    if (!is_new && !part.name.empty())
      row.report("part", fmt::format("wanted a name of its own; line {} has it too",
                                     parts[first->second].line));
    // A part with a fault stays in the list, so that its features are judged by its name.
    if (is_new) parts.push_back(std::move(part));
  }
  for (WaitingFeature& each : features) fit_feature(each.row, each.feature, places, parts);
  for (const Part& part : parts) check_faces(part, file, problems);
  if (document->rows.empty())
    problems.push_back({.file = file, .wanted = "has no parts; wanted at least one row"});
  return parts;
}

std::vector<Part> read_parts(const std::filesystem::path& path, Problems& problems) {
  const auto text = read_text_file(path, problems);
  if (!text) return {};
  return parse_parts(*text, path.string(), problems);
}

}  // namespace tackfree
