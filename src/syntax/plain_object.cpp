#include "tackfree/syntax/plain_object.hpp"

#include <algorithm>
#include <charconv>

namespace tackfree {

namespace {

constexpr std::size_t room_for = 8;         ///< members, made at once
constexpr std::size_t longest_number = 15;  ///< characters: held exactly

bool is_decimal(char c) { return c >= '0' && c <= '9'; }

/// Goes through the text once; whatever it does not know ends it.
class Scan {
 public:
  explicit Scan(std::string_view text) : at_(text.data()), end_(at_ + text.size()) {}

  std::optional<JsonNode> object() {
    JsonNode object{.kind = JsonNode::Kind::object, .line = 1};
    object.items.reserve(room_for);
    if (!take('{')) return std::nullopt;
    do {
      JsonNode& member = object.items.emplace_back();
      member.line = 1;
      if (!text(member.key) || !take(':') || !value(member)) return std::nullopt;
      if (object.member(member.key) != &member) return std::nullopt;
    } while (take(','));
    if (!take('}')) return std::nullopt;
    skip_space();
    return at_ == end_ ? std::optional(std::move(object)) : std::nullopt;
  }

 private:
  void skip_space() {
    while (at_ != end_ && (*at_ == ' ' || *at_ == '\t' || *at_ == '\r')) ++at_;
  }

  bool take(char wanted) {
    skip_space();
    if (at_ == end_ || *at_ != wanted) return false;
    ++at_;
    return true;
  }

  /// Printed ASCII alone, without escapes.
  bool text(std::string& into) {
    if (!take('"')) return false;
    const char* const begin = at_;
    while (at_ != end_ && *at_ >= ' ' && *at_ <= '~' && *at_ != '"' && *at_ != '\\') ++at_;
    into.assign(begin, at_);
    if (at_ == end_ || *at_ != '"') return false;
    ++at_;
    return true;
  }

  bool value(JsonNode& into) {
    skip_space();
    if (at_ == end_) return false;
    if (*at_ == '"') {
      into.kind = JsonNode::Kind::string;
      return text(into.text);
    }
    if (is_decimal(*at_) || *at_ == '-') return number(into);
    into.kind = JsonNode::Kind::boolean;
    into.boolean = *at_ == 't';
    const std::string_view word = into.boolean ? "true" : "false";
    if (static_cast<std::size_t>(end_ - at_) < word.size() ||
        !std::equal(word.begin(), word.end(), at_))
      return false;
    at_ += word.size();
    return true;
  }

  /// Digits, and a point with digits after it.
  bool number(JsonNode& into) {
    const char* const begin = at_;
    if (*at_ == '-') ++at_;
    const char* const first = at_;
    skip_digits();
    if (at_ == first || (*first == '0' && (at_ - first > 1 || first != begin))) return false;
    if (at_ != end_ && *at_ == '.') {
      const char* const point = at_++;
      skip_digits();
      if (at_ - point < 2) return false;
    }
    into.kind = JsonNode::Kind::number;
    into.text.assign(begin, at_);
    return into.text.size() <= longest_number &&
           std::from_chars(begin, at_, into.number).ptr == at_;
  }

  void skip_digits() {
    while (at_ != end_ && is_decimal(*at_)) ++at_;
  }

  const char* at_;
  const char* end_;
};

}  // namespace

std::optional<JsonNode> plain_object(std::string_view line) { return Scan(line).object(); }

}  // namespace tackfree
