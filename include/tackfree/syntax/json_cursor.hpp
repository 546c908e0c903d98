// JSON cursor: reads one JSON object key by key, and makes a Problem of whatever is wrong with it.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/syntax/json_document.hpp"

#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// The name of a key, and whether it must be there: `number("price", ...)`,
/// `text(needed("name"))`.
struct JsonKey {
  std::string_view name;
  bool must_be_there = false;
  // NOLINTNEXTLINE(google-explicit-constructor)
  constexpr JsonKey(const char* key) : name(key) {}
  // NOLINTNEXTLINE(google-explicit-constructor)
  constexpr JsonKey(std::string_view key) : name(key) {}
};
constexpr JsonKey needed(JsonKey key) {
  key.must_be_there = true;
  return key;
}

/// The numbers that make sense for a key, ends included, and their unit in words.
struct NumberRange {
  double least = 0;
  double most = std::numeric_limits<double>::max();
  std::string_view unit{};
};

/// Reads one object. Each reading call makes its key a known one; `refuse_unknown`, called last,
/// reports the keys that are left. Wrong values are reported and then count as missing, so that
/// one run finds every mistake. The node must outlive the cursor.
class JsonCursor {
 public:
  /// `path` names the object in Problems; empty for the whole file.
  JsonCursor(const JsonNode& node, std::string path, std::string file, Problems& problems);

  int line() const { return node_.line; }
  const std::string& path() const { return path_; }
  const std::string& file() const { return file_; }
  Problems& problems() { return problems_; }

  bool has(std::string_view key) const { return node_.member(key) != nullptr; }
  /// The value under `key`, whatever it is.
  const JsonNode* value(JsonKey key);
  /// Text that is not empty.
  std::optional<std::string> text(JsonKey key);
  std::optional<double> number(JsonKey key, NumberRange range);
  std::optional<int> whole(JsonKey key, NumberRange range);
  std::optional<bool> flag(JsonKey key);
  /// One of `words`, as its index.
  std::optional<std::size_t> word(JsonKey key, std::span<const std::string_view> words);
  std::optional<JsonCursor> object(JsonKey key);
  /// A list of objects; what is no object in it is reported and left out.
  std::vector<JsonCursor> objects(JsonKey key);
  /// A list of texts that are not empty.
  std::vector<const JsonNode*> texts(JsonKey key);
  /// Every member, all of them known: for objects whose keys are names.
  std::vector<JsonCursor> named_objects();

  void refuse_unknown();

  /// Reports what is wrong with the value under `key`, or with the object when it is not there.
  void report(std::string_view key, std::string wanted, std::string hint = {});
  void report(const JsonNode& at, std::string path, std::string wanted, std::string hint = {});
  std::string path_of(std::string_view key) const;

 private:
  const JsonNode& node_;
  std::string path_;
  std::string file_;
  Problems& problems_;
  std::vector<std::string> known_;
};

/// The number in `node` when it is one within `range`; else a Problem under `path`.
std::optional<double> number_in(const JsonNode& node, const std::string& path,
                                const NumberRange& range, const std::string& file,
                                Problems& problems);

/// `a number of h from 0.1 to 1000`.
std::string wanted_number(const NumberRange& range);

}  // namespace tackfree
