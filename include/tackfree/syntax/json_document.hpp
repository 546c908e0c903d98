// JSON document: a parsed JSON text whose every value knows its line.
#pragma once

#include "tackfree/base/problem.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// One JSON value. Members of an object are its items, in the order of the text, with their keys.
struct JsonNode {
  enum class Kind { null, boolean, number, string, array, object };
  Kind kind = Kind::null;
  int line = 0;        ///< of the value's first character, from 1
  std::string key{};   ///< the name under which an object holds it
  std::string text{};  ///< a string's text, a number as it was written
  double number = 0;
  bool boolean = false;
  std::vector<JsonNode> items{};

  /// The member called `name`, or nothing.
  const JsonNode* member(std::string_view name) const;
};

/// The value as a person would recognise it: `"text"` without quotes, a number as written,
/// `an object`, `a list`, `null`, `true`.
std::string shown_value(const JsonNode& node);

/// Deepest nesting and most values that are read; a job has 8 levels and some hundred values.
inline constexpr std::size_t deepest_json = 64;
inline constexpr std::size_t longest_json = 200'000;
/// The same of a plan that tackfree wrote: a step has some 60 values there.
inline constexpr std::size_t longest_written_json = 2'000'000;

/// The value in `text`. A text that is not JSON, is nested too deep, is too long, or names a key
/// twice in one object, is one Problem with its line (of repeated keys at most 20).
std::optional<JsonNode> parse_json(std::string_view text, const std::string& file,
                                   Problems& problems, std::size_t most_values = longest_json);

}  // namespace tackfree
