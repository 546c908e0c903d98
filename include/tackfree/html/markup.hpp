// Markup: elements of HTML and SVG; the one place where text becomes markup and is escaped.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tackfree {

/// Cleaned text with `&`, `<`, `>` and both quotes as references: fit for text and for quoted
/// attributes. At most `longest_shown` columns of it are left.
std::string escaped_markup(std::string_view text);

inline constexpr std::size_t longest_shown = 2000;

/// Elements one inside the other. Names of tags and attributes are the program's own; values and
/// texts may be the person's, and are escaped. An attribute without a value stands alone, as
/// `open`.
class Markup {
 public:
  using Attributes = std::initializer_list<std::pair<std::string_view, std::string>>;

  void open(std::string_view tag, Attributes attributes = {});
  /// Ends the innermost element; throws std::logic_error when none is open.
  void close();
  void element(std::string_view tag, Attributes attributes, std::string_view text);
  /// An element that never has content, as HTML has them: `<br>`.
  void lone(std::string_view tag, Attributes attributes = {});
  void text(std::string_view text);
  /// Text whose reading direction is its own and leaves that of its neighbours alone.
  void isolated(std::string_view text);
  /// What is markup already, such as a part made apart or a style sheet.
  void raw(std::string_view markup) { text_ += markup; }

  bool is_closed() const { return open_.empty(); }
  const std::string& markup() const { return text_; }

 private:
  void tag(std::string_view name, Attributes attributes, std::string_view end);

  std::string text_;
  std::vector<std::string> open_;
};

}  // namespace tackfree
