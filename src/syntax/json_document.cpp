#include "tackfree/syntax/json_document.hpp"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

constexpr std::size_t most_repeated_keys = 20;
constexpr std::size_t most_common_size = 8;  ///< of lists and objects: room made at once

/// How far the parser has read. Lines are counted when they are asked for: the parser takes every
/// byte, but values are few.
class ReadingPlace {
 public:
  explicit ReadingPlace(const char* begin) : at_(begin), begin_(begin), counted_(begin) {}

  void move_to(const char* at) { at_ = at; }
  /// Of the byte that comes next.
  int line() {
    line_ += static_cast<int>(std::count(counted_, at_, '\n'));
    counted_ = at_;
    return line_;
  }
  /// Was the last byte read the end of a line?
  bool at_line_end() const { return at_ != begin_ && at_[-1] == '\n'; }

 private:
  const char* at_;
  const char* begin_;
  const char* counted_;
  int line_ = 1;
};

/// Walks over the text for the parser and notes how far: nlohmann 3.11 does not tell.
class NotingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  NotingIterator(const char* position, ReadingPlace& place) : position_(position), place_(&place) {}
  reference operator*() const { return *position_; }
  NotingIterator& operator++() {
    place_->move_to(++position_);
    return *this;
  }
  NotingIterator operator++(int) {
    NotingIterator before = *this;
    ++*this;
    return before;
  }
  friend bool operator==(const NotingIterator& a, const NotingIterator& b) {
    return a.position_ == b.position_;
  }
  friend bool operator!=(const NotingIterator& a, const NotingIterator& b) { return !(a == b); }

 private:
  const char* position_;
  ReadingPlace* place_;
};

/// Builds the tree from the parser's events. Every event returns false to stop.
class TreeBuilder {
 public:
  using number_integer_t = std::int64_t;
  using number_unsigned_t = std::uint64_t;
  using number_float_t = double;
  using string_t = std::string;
  using binary_t = std::vector<std::uint8_t>;

  TreeBuilder(ReadingPlace& place, const std::string& file, std::size_t most_values,
              Problems& problems)
      : place_(place), file_(file), most_values_(most_values), problems_(problems) {}

  bool null() { return add(JsonNode{}); }
  bool boolean(bool value) { return add({.kind = JsonNode::Kind::boolean, .boolean = value}); }
  bool number_integer(number_integer_t value) {
    return add_number(static_cast<double>(value), std::to_string(value));
  }
  bool number_unsigned(number_unsigned_t value) {
    return add_number(static_cast<double>(value), std::to_string(value));
  }
  bool number_float(number_float_t value, const string_t& text) { return add_number(value, text); }
  bool string(string_t& value) {
    return add({.kind = JsonNode::Kind::string, .text = std::move(value)});
  }
  static bool binary(binary_t& /*value*/) { return false; }
  bool start_object(std::size_t /*size*/) { return open(JsonNode::Kind::object); }
  bool start_array(std::size_t /*size*/) { return open(JsonNode::Kind::array); }
  bool key(string_t& value) {
    key_ = std::move(value);
    return true;
  }
  bool end_object() {
    find_repeated_keys(open_.back());
    return close();
  }
  bool end_array() { return close(); }

  bool parse_error(std::size_t /*position*/, const std::string& last_token,
                   const nlohmann::detail::exception& fault) {
    if (fault.id == 406)
      return refuse(last_token, "wanted a number that a computer can hold, at most 1.8e308");
    std::string why = fault.what();
    if (const auto colon = why.find(": "); colon != std::string::npos) why.erase(0, colon + 2);
    if (const auto semicolon = why.find("; last read"); semicolon != std::string::npos)
      why.erase(semicolon);
    return refuse(last_token, "wanted JSON text here (" + why + ")");
  }

  std::optional<JsonNode> take() { return std::move(root_); }

 private:
  int line() { return place_.line(); }
  /// Of what is known only from the byte after it.
  int line_before() { return place_.line() - (place_.at_line_end() ? 1 : 0); }

  bool refuse(std::string found, std::string wanted) {
    problems_.push_back({.file = file_,
                         .line = line_before(),
                         .found = std::move(found),
                         .wanted = std::move(wanted)});
    return false;
  }
  bool add_number(double value, std::string text) {
    JsonNode node{.kind = JsonNode::Kind::number, .text = std::move(text), .number = value};
    node.line = line_before();
    return add(std::move(node));
  }
  bool add(JsonNode&& node) {
    if (++count_ > most_values_)
      return refuse({}, fmt::format("wanted at most {} values in one file", most_values_));
    if (node.line == 0) node.line = line();
    node.key = std::exchange(key_, {});
    if (open_.empty())
      root_ = std::move(node);
    else
      open_.back().items.push_back(std::move(node));
    return true;
  }
  bool open(JsonNode::Kind kind) {
    if (open_.size() >= deepest_json)
      return refuse({}, fmt::format("wanted at most {} levels of nesting", deepest_json));
    JsonNode& node = open_.emplace_back();
    node.kind = kind;
    node.line = line();
    node.key = std::exchange(key_, {});
    node.items.reserve(most_common_size);
    return true;
  }
  bool close() {
    JsonNode node = std::move(open_.back());
    open_.pop_back();
    key_ = node.key;
    return add(std::move(node));
  }
  void find_repeated_keys(const JsonNode& object) {
    std::vector<const JsonNode*> members;
    members.reserve(object.items.size());
    for (const JsonNode& member : object.items) members.push_back(&member);
    // Of the same key in the order of the text, in which they lie.
    std::sort(members.begin(), members.end(), [](const JsonNode* a, const JsonNode* b) {
      const int order = a->key.compare(b->key);
      return order != 0 ? order < 0 : a < b;
    });
    for (std::size_t i = 1; i < members.size() && repeated_ < most_repeated_keys; ++i) {
      if (members[i]->key != members[i - 1]->key) continue;
      ++repeated_;
      problems_.push_back({.file = file_,
                           .line = members[i]->line,
                           .key = members[i]->key,
                           .wanted = "wanted each key once in an object",
                           .hint = fmt::format("it is also on line {}", members[i - 1]->line)});
    }
  }

  ReadingPlace& place_;
  const std::string& file_;
  std::size_t most_values_;
  Problems& problems_;
  std::optional<JsonNode> root_;
  std::vector<JsonNode> open_;
  std::string key_;
  std::size_t count_ = 0;
  std::size_t repeated_ = 0;
};

}  // namespace

const JsonNode* JsonNode::member(std::string_view name) const {
  for (const JsonNode& item : items)
    if (item.key == name) return &item;
  return nullptr;
}

std::string shown_value(const JsonNode& node) {
  switch (node.kind) {
    case JsonNode::Kind::null:
      return "null";
    case JsonNode::Kind::boolean:
      return node.boolean ? "true" : "false";
    case JsonNode::Kind::array:
      return "a list";
    case JsonNode::Kind::object:
      return "an object";
    default:
      return node.text;
  }
}

std::optional<JsonNode> parse_json(std::string_view text, const std::string& file,
                                   Problems& problems, std::size_t most_values) {
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    problems.push_back({.file = file, .wanted = "is empty; wanted JSON text"});
    return std::nullopt;
  }
  const char* const begin = text.data();
  ReadingPlace place(begin);
  const std::size_t before = problems.size();
  TreeBuilder builder(place, file, most_values, problems);
  const bool whole = nlohmann::json::sax_parse(
      NotingIterator(begin, place), NotingIterator(begin + text.size(), place), &builder);
  if (!whole || problems.size() > before) return std::nullopt;
  return builder.take();
}

}  // namespace tackfree
