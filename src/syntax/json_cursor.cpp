#include "tackfree/syntax/json_cursor.hpp"

#include "tackfree/base/name.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t most_common_keys = 16;  ///< room made at once

std::string listed(std::span<const std::string_view> words) {
  return fmt::format("\"{}\"", fmt::join(words, "\", \""));
}

bool is_text(const JsonNode& node) {
  return node.kind == JsonNode::Kind::string &&
         node.text.find_first_not_of(" \t\r\n") != std::string::npos;
}

}  // namespace

JsonCursor::JsonCursor(const JsonNode& node, std::string path, std::string file, Problems& problems)
    : node_(node), path_(std::move(path)), file_(std::move(file)), problems_(problems) {
  known_.reserve(most_common_keys);
  if (node.kind != JsonNode::Kind::object) report(node, path_, "wanted an object, { ... }");
}

std::string JsonCursor::path_of(std::string_view key) const {
  return path_.empty() ? std::string(key) : fmt::format("{}.{}", path_, key);
}

void JsonCursor::report(const JsonNode& at, std::string path, std::string wanted,
                        std::string hint) {
  problems_.push_back({.file = file_,
                       .line = at.line,
                       .key = std::move(path),
                       .found = shown_value(at),
                       .wanted = std::move(wanted),
                       .hint = std::move(hint)});
}

void JsonCursor::report(std::string_view key, std::string wanted, std::string hint) {
  if (const JsonNode* node = node_.member(key)) {
    report(*node, path_of(key), std::move(wanted), std::move(hint));
    return;
  }
  problems_.push_back({.file = file_,
                       .line = node_.line,
                       .key = path_of(key),
                       .wanted = std::move(wanted),
                       .hint = std::move(hint)});
}

const JsonNode* JsonCursor::value(JsonKey key) {
  known_.emplace_back(key.name);
  const JsonNode* node = node_.member(key.name);
  if (node == nullptr && key.must_be_there && node_.kind == JsonNode::Kind::object)
    report(key.name, "is missing; this key is needed");
  return node;
}

std::optional<std::string> JsonCursor::text(JsonKey key) {
  const JsonNode* node = value(key);
  if (node == nullptr) return std::nullopt;
  if (is_text(*node)) return node->text;
  report(key.name, "wanted text in quotes, not empty");
  return std::nullopt;
}

std::optional<double> JsonCursor::number(JsonKey key, NumberRange range) {
  const JsonNode* node = value(key);
  if (node == nullptr) return std::nullopt;
  return number_in(*node, path_of(key.name), range, file_, problems_);
}

std::optional<int> JsonCursor::whole(JsonKey key, NumberRange range) {
  const auto found = number(key, range);
  if (!found) return std::nullopt;
  if (*found == std::floor(*found)) return static_cast<int>(*found);
  report(key.name, fmt::format("wanted a whole number from {} to {}", range.least, range.most));
  return std::nullopt;
}

std::optional<bool> JsonCursor::flag(JsonKey key) {
  const JsonNode* node = value(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == JsonNode::Kind::boolean) return node->boolean;
  report(key.name, "wanted true or false, without quotes");
  return std::nullopt;
}

std::optional<std::size_t> JsonCursor::word(JsonKey key, std::span<const std::string_view> words) {
  const JsonNode* node = value(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == JsonNode::Kind::string)
    for (std::size_t i = 0; i < words.size(); ++i)
      if (words[i] == node->text) return i;
  const std::vector<std::string> known(words.begin(), words.end());
  const auto near = nearest_name(node->text, known);
  report(key.name, "wanted one of " + listed(words),
         near ? fmt::format("did you mean \"{}\"?", *near) : "");
  return std::nullopt;
}

std::optional<JsonCursor> JsonCursor::object(JsonKey key) {
  const JsonNode* node = value(key);
  if (node == nullptr) return std::nullopt;
  JsonCursor cursor(*node, path_of(key.name), file_, problems_);
  if (node->kind != JsonNode::Kind::object) return std::nullopt;
  return cursor;
}

std::vector<JsonCursor> JsonCursor::objects(JsonKey key) {
  std::vector<JsonCursor> result;
  const JsonNode* node = value(key);
  if (node == nullptr) return result;
  if (node->kind != JsonNode::Kind::array) {
    report(key.name, "wanted a list of objects, [ { ... }, ... ]");
    return result;
  }
  for (std::size_t i = 0; i < node->items.size(); ++i) {
    JsonCursor cursor(node->items[i], fmt::format("{}[{}]", path_of(key.name), i), file_,
                      problems_);
    if (node->items[i].kind == JsonNode::Kind::object) result.push_back(std::move(cursor));
  }
  if (node->items.empty() && key.must_be_there)
    report(key.name, "is empty; wanted at least one entry");
  return result;
}

std::vector<const JsonNode*> JsonCursor::texts(JsonKey key) {
  std::vector<const JsonNode*> result;
  const JsonNode* node = value(key);
  if (node == nullptr) return result;
  if (node->kind != JsonNode::Kind::array) {
    report(key.name, "wanted a list of texts, [ \"...\", ... ]");
    return result;
  }
  for (std::size_t i = 0; i < node->items.size(); ++i) {
    if (is_text(node->items[i]))
      result.push_back(&node->items[i]);
    else
      report(node->items[i], fmt::format("{}[{}]", path_of(key.name), i),
             "wanted text in quotes, not empty");
  }
  return result;
}

std::vector<JsonCursor> JsonCursor::named_objects() {
  std::vector<JsonCursor> result;
  for (const JsonNode& item : node_.items) {
    known_.push_back(item.key);
    JsonCursor cursor(item, path_of(item.key), file_, problems_);
    if (item.kind == JsonNode::Kind::object) result.push_back(std::move(cursor));
  }
  return result;
}

void JsonCursor::refuse_unknown() {
  if (node_.kind != JsonNode::Kind::object) return;
  for (const JsonNode& item : node_.items) {
    if (std::find(known_.begin(), known_.end(), item.key) != known_.end()) continue;
    problems_.push_back({.file = file_,
                         .line = item.line,
                         .key = path_of(item.key),
                         .wanted = "is not a known key; wanted a known one",
                         .hint = name_hint(item.key, known_)});
  }
}

std::string wanted_number(const NumberRange& range) {
  const std::string unit = range.unit.empty() ? "" : fmt::format(" of {}", range.unit);
  if (range.most == std::numeric_limits<double>::max())
    return fmt::format("wanted a number{}, {} or more", unit, range.least);
  return fmt::format("wanted a number{} from {} to {}", unit, range.least, range.most);
}

std::optional<double> number_in(const JsonNode& node, const std::string& path,
                                const NumberRange& range, const std::string& file,
                                Problems& problems) {
  const bool is_number = node.kind == JsonNode::Kind::number;
  if (is_number && node.number >= range.least && node.number <= range.most) return node.number;
  problems.push_back({.file = file,
                      .line = node.line,
                      .key = path,
                      .found = shown_value(node),
                      .wanted = wanted_number(range),
                      .hint = node.kind == JsonNode::Kind::string ? "without quotes" : ""});
  return std::nullopt;
}

}  // namespace tackfree
