#include "tackfree/input/figure_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/names_of.hpp"
#include "tackfree/syntax/measure.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::array all_origins{Origin::measured, Origin::label, Origin::published,
                                 Origin::practice, Origin::assumed};

/// The grade in `node` when the P-scale has it; else a Problem.
std::optional<Grit> grit_in(JsonCursor& object, std::string_view key, const JsonNode& node) {
  if (node.kind == JsonNode::Kind::number)
    for (const int p : p_grades)
      if (node.number == p) return Grit{p};
  object.report(node, object.path_of(key),
                fmt::format("wanted a grade of the P-scale: {}", fmt::join(p_grades, ", ")));
  return std::nullopt;
}

NumberRange in_fahrenheit(const NumberRange& range) {
  return {celsius(range.least).in_fahrenheit(), celsius(range.most).in_fahrenheit(), "F"};
}

bool is_whole(double number) { return number == std::floor(number); }

}  // namespace

std::optional<OriginAndSource> read_origin(JsonCursor& cursor, const JsonNode& node,
                                           std::size_t first, const SourceNames& sources) {
  const std::string path = cursor.path_of(node.key);
  if (node.kind != JsonNode::Kind::array || node.items.size() <= first ||
      node.items.size() > first + 2) {
    cursor.report(node, path, "wanted the figure and its origin, [value, \"practice\"]");
    return std::nullopt;
  }
  const std::vector<std::string> words = names_of(all_origins, word_for);
  const JsonNode& word = node.items[first];
  const auto named = std::find(words.begin(), words.end(), word.text);
  if (named == words.end()) {
    cursor.report(word, path, "wanted one of the five origins", name_hint(word.text, words));
    return std::nullopt;
  }
  OriginAndSource result{.origin = all_origins[static_cast<std::size_t>(named - words.begin())],
                         .source = {}};
  if (node.items.size() == first + 1) {
    if (result.origin != Origin::published) return result;
    cursor.report(node, path, "wanted the source of a published figure after its origin");
    return std::nullopt;
  }
  const JsonNode& cited = node.items[first + 1];
  for (const SourceNames::Source& source : sources.all)
    if (source.key == cited.text) result.source = source.name;
  if (!result.source.empty()) return result;
  cursor.report(cited, path, "wanted a key of sources.json",
                name_hint(cited.text, names_of(sources.all, &SourceNames::Source::key)));
  return std::nullopt;
}

std::optional<FigureReader::Found> FigureReader::find(std::string_view key, bool must_be_there) {
  const JsonKey name(key);
  const JsonNode* node = object_.value(must_be_there && in_finishing_data() ? needed(name) : name);
  if (node == nullptr) return std::nullopt;
  if (!in_finishing_data()) return Found{node, {origin_, {}}};
  const auto from = read_origin(object_, *node, 1, *sources_);
  if (!from) return std::nullopt;
  return Found{&node->items[0], *from};
}

std::optional<Sourced<double>> FigureReader::number(std::string_view key, NumberRange range,
                                                    bool must_be_there) {
  const auto found = find(key, must_be_there);
  if (!found) return std::nullopt;
  const auto value =
      number_in(*found->value, object_.path_of(key), range, object_.file(), object_.problems());
  if (!value) return std::nullopt;
  return sourced(*value, found->from.origin, found->from.source);
}

void FigureReader::read(Sourced<double>& target, std::string_view key, NumberRange range) {
  if (auto found = number(key, range, true)) target = std::move(*found);
}

void FigureReader::read(Sourced<int>& target, std::string_view key, NumberRange range) {
  const auto found = number(key, range, true);
  if (!found) return;
  if (is_whole(found->value))
    target = {static_cast<int>(found->value), found->origin, found->source};
  else
    object_.report(key, "wanted a whole number");
}

void FigureReader::read(std::optional<Sourced<int>>& target, std::string_view key,
                        NumberRange range) {
  const auto found = number(key, range, false);
  if (!found) return;
  if (is_whole(found->value))
    target = Sourced<int>{static_cast<int>(found->value), found->origin, found->source};
  else
    object_.report(key, "wanted a whole number");
}

std::optional<Sourced<Temperature>> FigureReader::temperature(std::string_view key,
                                                              NumberRange celsius_range,
                                                              bool must_be_there) {
  const std::string in_c = fmt::format("{}_c", key);
  if (in_finishing_data()) {
    const auto found = number(in_c, celsius_range, must_be_there);
    if (!found) return std::nullopt;
    return sourced(celsius(found->value), found->origin, found->source);
  }
  const auto found = read_temperature(object_, key, celsius_range);
  if (!found) return std::nullopt;
  return sourced(*found, origin_);
}

void FigureReader::read(Sourced<Temperature>& target, std::string_view key,
                        NumberRange celsius_range) {
  if (auto found = temperature(key, celsius_range, true)) target = std::move(*found);
}

void FigureReader::read(std::optional<Sourced<Temperature>>& target, std::string_view key,
                        NumberRange celsius_range) {
  if (auto found = temperature(key, celsius_range, false)) target = std::move(*found);
}

void FigureReader::read(std::optional<Sourced<Grit>>& target, std::string_view key) {
  const auto found = find(key, false);
  if (!found) return;
  if (const auto grit = grit_in(object_, key, *found->value))
    target = Sourced<Grit>{*grit, found->from.origin, found->from.source};
}

void FigureReader::read(Sourced<std::vector<Grit>>& target, std::string_view key) {
  const auto found = find(key, true);
  if (!found) return;
  const JsonNode& list = *found->value;
  std::vector<Grit> grits;
  bool rising = list.kind == JsonNode::Kind::array && !list.items.empty();
  for (const JsonNode& item : list.items) {
    const auto grit = grit_in(object_, key, item);
    if (!grit) return;
    if (!grits.empty() && *grit <= grits.back()) rising = false;
    grits.push_back(*grit);
  }
  if (rising)
    target = {std::move(grits), found->from.origin, found->from.source};
  else
    object_.report(key, "wanted a list of grits from coarse to fine, such as [120, 150, 180]");
}

void FigureReader::read(Sourced<std::vector<TinSize>>& target, std::string_view key) {
  const auto found = find(key, true);
  if (!found) return;
  std::vector<TinSize> sizes;
  for (const JsonNode& item : found->value->items) {
    const Reading<Volume> volume = read_volume(item.text);
    if (!volume.value) return object_.report(item, object_.path_of(key), volume.wanted);
    sizes.push_back({.label = item.text, .volume = *volume.value, .price = {}});
  }
  if (sizes.empty())
    object_.report(key, R"(wanted a list of volumes, such as ["0.5 L", "1 L"])");
  else
    target = {std::move(sizes), found->from.origin, found->from.source};
}

std::optional<Temperature> read_temperature(JsonCursor& object, JsonKey key,
                                            NumberRange celsius_range) {
  const std::string in_c = fmt::format("{}_c", key.name);
  const std::string in_f = fmt::format("{}_f", key.name);
  celsius_range.unit = "C";
  const JsonKey main(in_c);
  const auto as_c =
      object.number(key.must_be_there && !object.has(in_f) ? needed(main) : main, celsius_range);
  const auto as_f = object.number(std::string_view(in_f), in_fahrenheit(celsius_range));
  if (object.has(in_c) && object.has(in_f)) {
    object.report(in_f, fmt::format("wanted either {} or {}, not both", in_c, in_f));
    return std::nullopt;
  }
  if (as_c) return celsius(*as_c);
  if (as_f) return fahrenheit(*as_f);
  return std::nullopt;
}

}  // namespace tackfree
