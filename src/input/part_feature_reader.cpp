#include "tackfree/input/part_feature_reader.hpp"

#include <algorithm>
#include <numbers>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

enum FeatureKind : std::size_t { cut_out, hole, groove, rebate, moulding, mask };

constexpr std::array<std::string_view, 7> side_words{"top",  "bottom", "front", "back",
                                                     "left", "right",  "side"};
constexpr std::array sides{Face::top,  Face::bottom, Face::front, Face::back,
                           Face::left, Face::right,  Face::side};

Face read_face(PartsRow& row) {
  return sides.at(row.word("face", std::span(side_words).first(2), 0));
}

Face read_along(PartsRow& row) {
  if (row.needed_text("along", "the edge it runs along: front, back, left or right").empty())
    return Face::front;
  return sides.at(row.word("along", std::span(side_words).subspan(2, 4), 0) + 2);
}

Groove::Run read_run(PartsRow& row) {
  constexpr std::array<std::string_view, 2> runs{"length", "width"};
  return row.word("run", runs, 0) == 0 ? Groove::Run::with_length : Groove::Run::with_width;
}

Length length_or_all(PartsRow& row, PartFeature& feature) {
  feature.full_length = row.text("length").empty();
  return row.length("length").value_or(Length{});
}

Mask read_mask(PartsRow& row, PartFeature& feature) {
  feature.side_named = !row.text("face").empty();
  return {.face = sides.at(row.word("face", side_words, 0)),
          .run = read_run(row),
          .length = length_or_all(row, feature),
          .width = row.length("width").value_or(Length{}),
          .count = row.quantity()};
}

Feature read_by_kind(PartsRow& row, PartFeature& feature) {
  switch (feature.kind) {
    case cut_out:
      return CutOut{.length = row.needed_length("length"),
                    .width = row.needed_length("width"),
                    .count = row.quantity(),
                    .rim_coated = row.yes_no("rim", true)};
    case hole:
      return Hole{.diameter = row.needed_length("diameter"),
                  .count = row.quantity(),
                  .rim_coated = row.yes_no("rim", true)};
    case groove:
      return Groove{.face = read_face(row),
                    .run = read_run(row),
                    .length = length_or_all(row, feature),
                    .width = row.needed_length("width"),
                    .depth = row.needed_length("depth"),
                    .count = row.quantity(),
                    .masked = row.yes_no("masked", false)};
    case rebate:
      return Rebate{.face = read_face(row),
                    .along = read_along(row),
                    .length = length_or_all(row, feature),
                    .width = row.needed_length("width"),
                    .depth = row.needed_length("depth"),
                    .masked = row.yes_no("masked", false)};
    case moulding:
      return Moulding{.along = read_along(row),
                      .length = length_or_all(row, feature),
                      .girth = row.needed_length("girth")};
    default:
      return read_mask(row, feature);
  }
}

std::string in_mm(Length length) { return fmt::format("{:.4g} mm", length.in(millimetres)); }

/// Judges the features of one row against a board; lengths left empty become the whole run.
class FitInBoard {
 public:
  FitInBoard(PartsRow& row, const Board& board, bool full_length)
      : row_(row), board_(board), full_length_(full_length) {}

  void operator()(CutOut& opening) {
    less("length", opening.length, board_.length, "the board's length", ": a rim must be left");
    less("width", opening.width, board_.width, "the board's width", ": a rim must be left");
  }
  void operator()(Hole& bore) {
    less("diameter", bore.diameter, std::min(board_.length, board_.width), "the board's sides",
         ": a rim must be left");
  }
  void operator()(Groove& channel) {
    const SideSize room = side_size(board_, channel.face, channel.run);
    fit_length(channel.length, room.run);
    no_more("width", channel.width, room.across, "the board is wide there");
    not_through(channel.depth);
  }
  void operator()(Rebate& step) {
    const bool beside_length = step.along == Face::front || step.along == Face::back;
    fit_length(step.length, beside_length ? board_.length : board_.width);
    less("width", step.width, beside_length ? board_.width : board_.length,
         "the board is wide there", "");
    not_through(step.depth);
  }
  void operator()(Moulding& profile) {
    fit_length(profile.length, side_size(board_, profile.along).run);
    if (profile.girth < board_.thickness)
      row_.report("girth", fmt::format("wanted at least the board's thickness, {}: the way over a "
                                       "profile is never shorter than the straight one",
                                       in_mm(board_.thickness)));
  }
  void operator()(Mask& strip) {
    const SideSize room = side_size(board_, strip.face, strip.run);
    fit_length(strip.length, room.run);
    if (strip.face == Face::side)
      row_.report("face", "wanted a side of a board: top, bottom, front, back, left, right");
    if (strip.width <= Length{})
      row_.report("width", "is empty; wanted the width of the strip that is masked");
    no_more("width", strip.width, room.across, "the board is wide there");
  }

 private:
  void fit_length(Length& length, Length run) {
    if (full_length_) length = run;
    no_more("length", length, run, "the run of the board");
  }
  void no_more(std::string_view column, Length size, Length most, std::string_view what) {
    if (size > most)
      row_.report(column, fmt::format("wanted no more than {}, {}", what, in_mm(most)));
  }
  void less(std::string_view column, Length size, Length most, std::string_view what,
            std::string_view why) {
    if (size >= most)
      row_.report(column, fmt::format("wanted less than {}, {}{}", what, in_mm(most), why));
  }
  void not_through(Length depth) {
    less("depth", depth, board_.thickness, "the board's thickness",
         "; what goes right through is a cut-out");
  }

  PartsRow& row_;
  const Board& board_;
  bool full_length_;
};

/// The length that a mask can have on something round; nothing on other shapes.
std::optional<Length> round_length(const Shape& shape) {
  if (const auto* round = std::get_if<Round>(&shape)) return round->length;
  if (const auto* tube = std::get_if<Tube>(&shape)) return tube->length;
  if (const auto* turned = std::get_if<Turned>(&shape)) return turned->length;
  return std::nullopt;
}

void fit_mask_on_round(PartsRow& row, const PartFeature& feature, Length most, Part& part) {
  Mask strip = std::get<Mask>(feature.feature);
  if (feature.side_named && strip.face != Face::side)
    row.report("face", "wanted \"side\", or nothing: a mask goes all round");
  if (strip.width > Length{}) row.report("width", "wanted this field empty: a mask goes all round");
  if (feature.full_length)
    row.report("length", "is empty; wanted how much of the length is masked");
  if (strip.length * strip.count > most)
    row.report("length",
               fmt::format("wanted no more than the length of the part, {}", in_mm(most)));
  strip.face = Face::side;
  if (row.good()) part.features.emplace_back(strip);
}

/// What a feature takes of one side of its board.
struct TakenOf {
  Face side;

  Area operator()(const CutOut& each) const {
    return is_face() ? each.count * (each.length * each.width) : Area{};
  }
  Area operator()(const Hole& each) const {
    return is_face() ? each.count * std::numbers::pi / 4 * (each.diameter * each.diameter) : Area{};
  }
  Area operator()(const Groove& each) const {
    return each.face == side ? each.count * (each.length * each.width) : Area{};
  }
  Area operator()(const Rebate& each) const {
    Area sum;
    if (each.face == side) sum += each.length * each.width;
    if (each.along == side) sum += each.length * each.depth;
    return sum;
  }
  Area operator()(const Moulding&) const { return {}; }
  Area operator()(const Mask& each) const {
    return each.face == side ? each.count * (each.length * each.width) : Area{};
  }

 private:
  bool is_face() const { return side == Face::top || side == Face::bottom; }
};

void check_side(const Part& part, const Board& board, Face side, const std::string& file,
                Problems& problems) {
  const SideSize room = side_size(board, side);
  const Area whole = room.run * room.across;
  Area taken;
  Length moulded;
  for (const Feature& feature : part.features) {
    taken += std::visit(TakenOf{side}, feature);
    const auto* profile = std::get_if<Moulding>(&feature);
    if (profile != nullptr && profile->along == side) moulded += profile->length;
  }
  const std::string_view name = side_words.at(static_cast<std::size_t>(side));
  const auto report = [&](std::string found, std::string wanted) {
    problems.push_back({.file = file,
                        .line = part.line,
                        .key = part.name,
                        .found = std::move(found),
                        .wanted = std::move(wanted),
                        .hint = "look at the rows of its features and their quantities"});
  };
  if (taken > whole * (1 + 1e-9))
    report(fmt::format("{:.4g} m2 of features", taken.in(square_metres)),
           fmt::format("wanted no more than its {}, {:.4g} m2", name, whole.in(square_metres)));
  if (moulded > room.run * (1 + 1e-9))
    report(fmt::format("{} of moulding", in_mm(moulded)),
           fmt::format("wanted no more than the length of its {}, {}", name, in_mm(room.run)));
}

}  // namespace

PartFeature read_feature(PartsRow& row, std::size_t kind) {
  PartFeature feature;
  feature.kind = kind;
  feature.part = row.needed_text("part", "the name of the part it is in");
  for (const std::string_view column : {"batch", "coat"})
    if (!row.text(column).empty())
      row.report(column, fmt::format("wanted this field empty: a {} goes with its part",
                                     feature_kinds.at(kind)));
  feature.feature = read_by_kind(row, feature);
  row.refuse_unused(feature_kinds.at(kind));
  return feature;
}

void fit_feature(PartsRow& row, PartFeature feature, Part& part) {
  if (const auto* board = std::get_if<Board>(&part.shape)) {
    // A board whose own sizes are wrong has been reported; nothing can be said about what fits it.
    if (std::min({board->length, board->width, board->thickness}) <= Length{}) return;
    std::visit(FitInBoard(row, *board, feature.full_length), feature.feature);
    if (row.good()) part.features.push_back(feature.feature);
    return;
  }
  const auto length = round_length(part.shape);
  if (feature.kind == mask && length) {
    if (*length > Length{}) fit_mask_on_round(row, feature, *length, part);
    return;
  }
  row.report("part", fmt::format("wanted a board or sheet{}: a {} in another kind of part is not "
                                 "known here",
                                 feature.kind == mask ? ", or something round" : "",
                                 feature_kinds.at(feature.kind)));
}

void check_features(const Part& part, const std::string& file, Problems& problems) {
  const auto* board = std::get_if<Board>(&part.shape);
  if (board == nullptr || part.features.empty()) return;
  for (const Face side : sides)
    if (side != Face::side) check_side(part, *board, side, file, problems);
}

}  // namespace tackfree
