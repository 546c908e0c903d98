// Page: headings, paragraphs and tables of a report, whatever they are written on.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// A table with one head row. The first column is text and gives way when the page is narrow; the
/// others stand flush right.
struct Table {
  std::vector<std::string> head;
  std::vector<std::vector<std::string>> rows;  ///< each as long as the head
  std::vector<std::string> total;              ///< below a rule, or empty
};

/// What kind of paragraph it is, and the words before it. Each page lays it out in its own way.
struct Lead {
  enum class Kind {
    plain,
    item,        ///< one of a list
    look,        ///< one of a list that needs the eye
    question,    ///< asks the person something
    to_tick,     ///< with a box to tick, then the label: an amount
    ticked,      ///< the same, ticked already
    labelled,    ///< the label is a word for it
    introduced,  ///< the label reads on into it, as after a colon
    timed,       ///< the label is a clock time
    warning,     ///< the label is this signal word
    danger       ///< the label is this signal word
  };

  Kind kind = Kind::plain;
  std::size_t indent = 0;  ///< blanks before it where the page is made of columns
  std::string_view label;
  std::size_t columns = 0;  ///< that the label takes at least, on such a page

  static constexpr Lead plain(std::size_t indent = 0) { return {Kind::plain, indent, {}, 0}; }
  static constexpr Lead item() { return {Kind::item, 2, {}, 0}; }
  static constexpr Lead look(std::size_t indent = 2) { return {Kind::look, indent, {}, 0}; }
  static constexpr Lead question() { return {Kind::question, 2, {}, 0}; }
  static constexpr Lead to_tick(std::string_view label = {}, std::size_t columns = 0) {
    return {Kind::to_tick, 0, label, columns};
  }
  static constexpr Lead ticked(std::string_view label, std::size_t columns = 0) {
    return {Kind::ticked, 0, label, columns};
  }
  static constexpr Lead labelled(std::string_view label, std::size_t columns = 0,
                                 std::size_t indent = 0) {
    return {Kind::labelled, indent, label, columns};
  }
  static constexpr Lead introduced(std::string_view label, std::size_t indent = 0,
                                   std::size_t columns = 0) {
    return {Kind::introduced, indent, label, columns};
  }
  static constexpr Lead timed(std::string_view label, std::size_t columns, std::size_t indent) {
    return {Kind::timed, indent, label, columns};
  }
  static constexpr Lead warning(std::size_t columns = 0) {
    return {Kind::warning, 0, "WARNING", columns};
  }
  static constexpr Lead danger(std::size_t columns = 0) {
    return {Kind::danger, 0, "DANGER", columns};
  }
};

/// Texts may hold words as the person wrote them: each page cleans them.
class Page {
 public:
  Page() = default;
  Page(const Page&) = delete;
  Page& operator=(const Page&) = delete;
  virtual ~Page() = default;

  /// Columns of text that fit beside each other.
  virtual std::size_t columns() const = 0;
  /// One line after `indent` blanks; empty text is a blank line.
  virtual void line(std::size_t indent, std::string_view text) = 0;
  /// A blank line, never two in a row.
  virtual void blank() = 0;
  virtual void heading(std::string_view title) = 0;
  /// The heading of a part below the last heading.
  virtual void subheading(std::string_view title) = 0;
  /// The lead once, then the text beside it.
  virtual void paragraph(Lead lead, std::string_view text) = 0;
  virtual void table(const Table& table) = 0;
};

}  // namespace tackfree
