#include "tackfree/syntax/measure.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <span>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

template <class Kind>
struct NamedUnit {
  std::string_view name;
  Unit<Kind> unit;
};

using LengthName = NamedUnit<LengthKind>;
constexpr std::array length_names{
    LengthName{"mm", millimetres}, LengthName{"cm", centimetres}, LengthName{"m", metres},
    LengthName{"in", inches},      LengthName{"ft", feet},        LengthName{"yd", yards},
    LengthName{"\"", inches},      LengthName{"'", feet},         LengthName{"inch", inches},
    LengthName{"inches", inches},  LengthName{"foot", feet},      LengthName{"feet", feet}};
constexpr std::string_view wanted_length =
    "wanted a length with its unit (mm, cm, m, in, ft, yd), such as 48 1/4 in, 4 ft 2 in, 1226 mm";

using AreaName = NamedUnit<AreaKind>;
constexpr Unit<AreaKind> square_millimetres{1e-6};
constexpr Unit<AreaKind> square_centimetres{1e-4};
constexpr Unit<AreaKind> square_inches{0.0254 * 0.0254};
constexpr Unit<AreaKind> square_yards{0.9144 * 0.9144};
constexpr std::array area_names{
    AreaName{"mm2", square_millimetres}, AreaName{"cm2", square_centimetres},
    AreaName{"m2", square_metres},       AreaName{"in2", square_inches},
    AreaName{"ft2", square_feet},        AreaName{"yd2", square_yards},
    AreaName{"sq m", square_metres},     AreaName{"sq in", square_inches},
    AreaName{"sq ft", square_feet},      AreaName{"sq yd", square_yards}};
constexpr std::string_view wanted_area =
    "wanted an area with its unit (mm2, cm2, m2, in2, ft2, yd2), such as 2.4 m2, 26 sq ft";

constexpr Unit<VolumeKind> centilitres{1e-5};
using VolumeName = NamedUnit<VolumeKind>;
constexpr std::array volume_names{VolumeName{"ml", millilitres},
                                  VolumeName{"cl", centilitres},
                                  VolumeName{"l", litres},
                                  VolumeName{"litre", litres},
                                  VolumeName{"litres", litres},
                                  VolumeName{"liter", litres},
                                  VolumeName{"liters", litres},
                                  VolumeName{"m3", cubic_metres},
                                  VolumeName{"ft3", cubic_feet},
                                  VolumeName{"cu ft", cubic_feet},
                                  VolumeName{"fl oz", us_fluid_ounces},
                                  VolumeName{"pt", us_pints},
                                  VolumeName{"pint", us_pints},
                                  VolumeName{"pints", us_pints},
                                  VolumeName{"qt", us_quarts},
                                  VolumeName{"quart", us_quarts},
                                  VolumeName{"quarts", us_quarts},
                                  VolumeName{"gal", us_gallons},
                                  VolumeName{"gallon", us_gallons},
                                  VolumeName{"gallons", us_gallons}};
constexpr std::string_view wanted_volume =
    "wanted a volume with its unit (ml, l, m3, ft3, fl oz, pt, qt, gal), such as 1 qt, 750 ml";

/// Signs that word processors put for the plain ones.
constexpr std::array<std::pair<std::string_view, std::string_view>, 15> plain_signs{
    {{"\u2032", "'"},
     {"\u2019", "'"},
     {"\u2033", "\""},
     {"\u201D", "\""},
     {"''", "\""},
     {"\u00A0", " "},
     {"\u00B2", "2"},
     {"\u00B3", "3"},
     {"\u00BC", " 1/4"},
     {"\u00BD", " 1/2"},
     {"\u00BE", " 3/4"},
     {"\u215B", " 1/8"},
     {"\u215C", " 3/8"},
     {"\u215D", " 5/8"},
     {"\u215E", " 7/8"}}};

std::string plain(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    std::string_view sign = text.substr(0, 1);
    std::string_view written = sign;
    for (const auto& [fancy, simple] : plain_signs)
      if (text.starts_with(fancy)) {
        sign = fancy;
        written = simple;
      }
    result += written;
    text.remove_prefix(sign.size());
  }
  return result;
}

void skip_spaces(std::string_view& text) {
  text.remove_prefix(std::min(text.find_first_not_of(" \t"), text.size()));
}

bool starts_number(std::string_view text) {
  return !text.empty() && ((text[0] >= '0' && text[0] <= '9') || text[0] == '.');
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// What is wrong with a number; `none` when it was read.
enum class Fault { none, no_number, negative, too_large, divided_by_zero };

std::string_view wanted_for(Fault fault, std::string_view otherwise) {
  if (fault == Fault::negative) return "wanted a size over 0, without a minus sign";
  if (fault == Fault::too_large) return "wanted a smaller number";
  if (fault == Fault::divided_by_zero) return "wanted a fraction that is not divided by 0";
  return otherwise;
}

/// The decimal number at the front of `text`, which is taken off.
Fault take_decimal(std::string_view& text, double& number) {
  if (text.starts_with('-')) return Fault::negative;
  if (!starts_number(text)) return Fault::no_number;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault == std::errc::result_out_of_range) return Fault::too_large;
  if (fault != std::errc{}) return Fault::no_number;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return Fault::none;
}

/// The fraction, such as `3/4`, at the front of `text`, which is taken off.
Fault take_fraction(std::string_view& text, double& number) {
  std::string_view rest = text;
  double above = 0;
  double below = 0;
  if (take_decimal(rest, above) != Fault::none || !rest.starts_with('/')) return Fault::no_number;
  rest.remove_prefix(1);
  if (take_decimal(rest, below) != Fault::none) return Fault::no_number;
  if (below == 0) return Fault::divided_by_zero;
  number = above / below;
  text = rest;
  return Fault::none;
}

/// `2.5`, `3/4`, `48 1/4` or `48-1/4` at the front of `text`, which is taken off.
Fault take_number(std::string_view& text, double& number) {
  const Fault fraction_alone = take_fraction(text, number);
  if (fraction_alone != Fault::no_number) return fraction_alone;
  if (const Fault fault = take_decimal(text, number); fault != Fault::none) return fault;
  std::string_view rest = text;
  skip_spaces(rest);
  if (rest.starts_with('-')) rest.remove_prefix(1);
  double more = 0;
  const Fault fault = take_fraction(rest, more);
  if (fault == Fault::no_number) return Fault::none;
  number += more;
  text = rest;
  return fault;
}

template <class Kind>
const NamedUnit<Kind>* unit_called(std::string_view name, std::span<const NamedUnit<Kind>> names) {
  for (const NamedUnit<Kind>& unit : names)
    if (unit.name == name) return &unit;
  return nullptr;
}

/// The word at the front of `text` in small letters, or the sign ' or ", taken off.
std::string take_word(std::string_view& text) {
  std::size_t end = 0;
  if (text.starts_with('"') || text.starts_with('\''))
    end = 1;
  else
    while (end < text.size() && is_letter(text[end])) ++end;
  std::string word(text.substr(0, end));
  for (char& c : word)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  text.remove_prefix(end);
  return word;
}

/// The unit's name at the front of `text`, taken off with a full stop after it. `m2` is a name
/// where there is such a unit, else `m` before a number.
template <class Kind>
std::string take_unit_name(std::string_view& text, std::span<const NamedUnit<Kind>> names) {
  std::string name = take_word(text);
  if (text.starts_with('.') && !name.empty()) text.remove_prefix(1);
  if (name == "fl" || name == "cu" || name == "sq") {
    skip_spaces(text);
    name += " " + take_word(text);
    if (text.starts_with('.')) text.remove_prefix(1);
  }
  if (text.empty() || unit_called(name + text.front(), names) == nullptr) return name;
  name += text.front();
  text.remove_prefix(1);
  return name;
}

/// What a reading of one kind knows.
template <class Kind>
struct Grammar {
  std::span<const NamedUnit<Kind>> names;
  std::optional<Unit<Kind>> bare;
  std::string_view wanted;
  Quantity<Kind> least, most;
  std::string_view wanted_range;
};

/// One amount, or several with falling units (`4 ft 2 in`), added up.
template <class Kind>
Reading<Quantity<Kind>> read_amount(std::string_view text, const Grammar<Kind>& grammar) {
  Quantity<Kind> sum;
  double last_unit = 0;
  skip_spaces(text);
  do {
    double number = 0;
    if (const Fault fault = take_number(text, number); fault != Fault::none)
      return {std::nullopt, std::string(wanted_for(fault, grammar.wanted))};
    skip_spaces(text);
    if (text.starts_with(',')) return {std::nullopt, "wanted a decimal point and no commas"};
    const std::string name = take_unit_name(text, grammar.names);
    const NamedUnit<Kind>* unit = unit_called(name, grammar.names);
    skip_spaces(text);
    const bool stands_alone = last_unit == 0 && text.empty();
    if (name.empty() && stands_alone && grammar.bare) {
      sum = (*grammar.bare)(number);
      break;
    }
    if (unit == nullptr) return {std::nullopt, std::string(grammar.wanted)};
    const double size = unit->unit.si_per_unit();
    if (last_unit != 0 && size >= last_unit)
      return {std::nullopt, "wanted the larger unit first and each unit once, such as 4 ft 2 in"};
    last_unit = size;
    sum += unit->unit(number);
  } while (!text.empty());
  if (sum <= Quantity<Kind>{}) return {std::nullopt, "wanted a size over 0"};
  if (sum < grammar.least || sum > grammar.most)
    return {std::nullopt, std::string(grammar.wanted_range)};
  return {sum, {}};
}

}  // namespace

Reading<Length> read_length(std::string_view text, const std::optional<Unit<LengthKind>>& bare) {
  return read_amount<LengthKind>(plain(text),
                                 {.names = length_names,
                                  .bare = bare,
                                  .wanted = wanted_length,
                                  .least = millimetres(0.01),
                                  .most = metres(100),
                                  .wanted_range = "wanted a length from 0.01 mm to 100 m"});
}

Reading<Volume> read_volume(std::string_view text) {
  return read_amount<VolumeKind>(plain(text),
                                 {.names = volume_names,
                                  .bare = std::nullopt,
                                  .wanted = wanted_volume,
                                  .least = millilitres(1),
                                  .most = cubic_metres(100000),
                                  .wanted_range = "wanted a volume from 1 ml to 100000 m3"});
}

Reading<Area> read_area(std::string_view text, const std::optional<Unit<AreaKind>>& bare) {
  return read_amount<AreaKind>(plain(text),
                               {.names = area_names,
                                .bare = bare,
                                .wanted = wanted_area,
                                .least = square_metres(1e-6),
                                .most = square_metres(100000),
                                .wanted_range = "wanted an area from 1 mm2 to 100000 m2"});
}

std::optional<std::string> with_decimal_points(std::string_view text) {
  const auto is_digit = [&](std::size_t i) {
    return i < text.size() && text[i] >= '0' && text[i] <= '9';
  };
  for (std::size_t i = 1; i < text.size(); ++i) {
    const bool three_follow = is_digit(i + 1) && is_digit(i + 2) && is_digit(i + 3);
    const bool after_nought = text[i - 1] == '0' && (i < 2 || !is_digit(i - 2));
    if (text[i] == '.' && is_digit(i - 1) && three_follow && !is_digit(i + 4) && !after_nought)
      return std::nullopt;
  }
  std::string result(text);
  std::replace(result.begin(), result.end(), ',', '.');
  return result;
}

std::string plain_head(std::string_view head) {
  std::string result;
  for (const char sign : plain(head)) {
    const char small = sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
    const bool is_word =
        is_letter(small) || (small >= '0' && small <= '9') || (small & 0x80) != 0 || small == '-';
    if (is_word)
      result += small;
    else if (!result.empty() && result.back() != '_')
      result += '_';
  }
  while (result.ends_with('_')) result.pop_back();
  return result;
}

HeadUnit head_unit(std::string_view head) {
  constexpr std::array<std::string_view, 6> in_heads{"mm", "cm", "m", "in", "ft", "yd"};
  const std::size_t underscore = head.rfind('_');
  if (underscore == std::string_view::npos) return {std::string(head), {}, {}};
  const std::string name(head.substr(0, underscore));
  const std::string_view end = head.substr(underscore + 1);
  for (const std::string_view unit : in_heads) {
    if (end == unit) return {name, unit_called<LengthKind>(unit, length_names)->unit, {}};
    if (end.starts_with(unit) && end.substr(unit.size()) == "2")
      return {name, {}, unit_called<AreaKind>(end, area_names)->unit};
  }
  return {std::string(head), {}, {}};
}

}  // namespace tackfree
