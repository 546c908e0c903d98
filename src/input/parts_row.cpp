#include "tackfree/input/parts_row.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/syntax/measure.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::array<std::string_view, 14> measures{
    "length", "width",      "thickness",      "diameter",       "depth",
    "inner",  "area",       "stile_width",    "rail_width",     "set_back_top",
    "girth",  "slat_width", "slat_thickness", "set_back_bottom"};
constexpr std::array<std::string_view, 19> column_words{
    "kind",  "part",           "quantity", "material", "wood", "surface", "coat",
    "batch", "masked",         "face",     "along",    "run",  "rim",     "panels",
    "slats", "profile_factor", "grain",    "estimate", "note"};
constexpr std::array<std::string_view, 4> needed_columns{"kind", "part", "coat", "batch"};
constexpr int most_pieces = 100'000;

}  // namespace

std::optional<PartsColumns> PartsColumns::in(const CsvDocument& document, const std::string& file,
                                             Problems& problems) {
  PartsColumns result;
  result.decimal_comma_ = document.separator == ';';
  std::vector<std::string> known(column_words.begin(), column_words.end());
  known.insert(known.end(), measures.begin(), measures.end());
  const std::size_t before = problems.size();
  for (std::size_t place = 0; place < document.head.size(); ++place) {
    const std::string& head = document.head[place];
    const std::string plain = plain_head(head);
    HeadUnit split = head_unit(plain);
    const bool is_measure =
        std::find(measures.begin(), measures.end(), split.name) != measures.end();
    const bool fits = split.name == "area" ? !split.unit : !split.area_unit;
    if (!is_measure || !fits) split = {plain, {}, {}};
    if (std::find(known.begin(), known.end(), split.name) == known.end()) {
      problems.push_back({.file = file,
                          .line = 1,
                          .key = head,
                          .wanted = "is not a known column; wanted a known one",
                          .hint = name_hint(split.name, known)});
    } else if (!result.columns_
                    .emplace(split.name, Column{place, head, split.unit, split.area_unit})
                    .second) {
      problems.push_back(
          {.file = file, .line = 1, .key = head, .wanted = "wanted each column once"});
    }
  }
  for (const std::string_view name : needed_columns)
    if (result.find(name) == nullptr)
      problems.push_back({.file = file,
                          .line = 1,
                          .key = std::string(name),
                          .wanted = "is missing; this column is needed"});
  if (problems.size() > before) return std::nullopt;
  return result;
}

const PartsColumns::Column* PartsColumns::find(std::string_view name) const {
  const auto found = columns_.find(name);
  return found == columns_.end() ? nullptr : &found->second;
}

void PartsRow::report(std::string_view column, std::string wanted, std::string hint) {
  good_ = false;
  const PartsColumns::Column* at = columns_.find(column);
  problems_.push_back({.file = file_,
                       .line = row_.line,
                       .key = at == nullptr ? std::string(column) : at->head,
                       .found = at == nullptr ? "" : row_.fields[at->place],
                       .wanted = std::move(wanted),
                       .hint = std::move(hint)});
}

std::string PartsRow::text(std::string_view column) {
  asked_.emplace(column);
  const PartsColumns::Column* at = columns_.find(column);
  return at == nullptr ? "" : row_.fields[at->place];
}

std::string PartsRow::needed_text(std::string_view column, std::string_view wanted) {
  std::string found = text(column);
  if (found.empty()) report(column, fmt::format("is empty; wanted {}", wanted));
  return found;
}

std::optional<std::string> PartsRow::measure(std::string_view column) {
  const std::string found = text(column);
  if (!columns_.decimal_comma()) return found;
  auto with_point = with_decimal_points(found);
  if (!with_point)
    report(column, "can be read in two ways; wanted a decimal comma in a list with semicolons",
           "write 48,125 for 48 1/8, and no sign between thousands");
  return with_point;
}

std::optional<Length> PartsRow::length(std::string_view column) {
  const auto found = measure(column);
  if (!found || found->empty()) return std::nullopt;
  const Reading<Length> reading = read_length(*found, columns_.find(column)->unit);
  if (!reading.value) report(column, reading.wanted);
  return reading.value;
}

Length PartsRow::needed_length(std::string_view column) {
  if (text(column).empty()) {
    report(column, "is empty; wanted a length, such as 48 1/4 in or 1226 mm");
    return {};
  }
  return length(column).value_or(Length{});
}

Area PartsRow::needed_area(std::string_view column) {
  const auto found = measure(column);
  if (!found) return {};
  if (found->empty()) {
    report(column, "is empty; wanted an area, such as 2.4 m2 or 26 sq ft");
    return {};
  }
  const Reading<Area> reading = read_area(*found, columns_.find(column)->area_unit);
  if (!reading.value) report(column, reading.wanted);
  return reading.value.value_or(Area{});
}

double PartsRow::needed_number(std::string_view column, double least, double most) {
  const auto found = measure(column);
  if (!found) return least;
  double number = 0;
  const auto [end, fault] = std::from_chars(found->data(), found->data() + found->size(), number);
  if (fault == std::errc{} && end == found->data() + found->size() && number >= least &&
      number <= most)
    return number;
  report(column, fmt::format("{}wanted a number from {} to {}", found->empty() ? "is empty; " : "",
                             least, most));
  return least;
}

int PartsRow::whole(std::string_view column) {
  const std::string found = text(column);
  if (found.empty()) return 1;
  int number = 0;
  const auto [end, fault] = std::from_chars(found.data(), found.data() + found.size(), number);
  if (fault == std::errc{} && end == found.data() + found.size() && number >= 1 &&
      number <= most_pieces)
    return number;
  report(column, fmt::format("wanted a whole number from 1 to {}", most_pieces));
  return 1;
}

std::size_t PartsRow::word(std::string_view column, std::span<const std::string_view> choices,
                           std::size_t when_empty) {
  const std::string found = small_letters(text(column));
  if (found.empty()) return when_empty;
  for (std::size_t i = 0; i < choices.size(); ++i)
    if (found == choices[i]) return i;
  const std::vector<std::string> known(choices.begin(), choices.end());
  const auto near = nearest_name(found, known);
  report(column, fmt::format("wanted one of {}", fmt::join(choices, ", ")),
         near ? fmt::format("did you mean \"{}\"?", *near) : "");
  return when_empty;
}

bool PartsRow::yes_no(std::string_view column, bool when_empty) {
  constexpr std::array<std::string_view, 2> answers{"no", "yes"};
  return word(column, answers, when_empty ? 1 : 0) == 1;
}

void PartsRow::refuse_unused(std::string_view kind) {
  for (const auto& [name, column] : columns_.all()) {
    if (name == "note" || asked_.contains(name) || row_.fields[column.place].empty()) continue;
    report(name, fmt::format("wanted this field empty: a {} has no {}", kind, name));
  }
}

std::string small_letters(std::string text) {
  for (char& sign : text)
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
  return text;
}

}  // namespace tackfree
