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

/// What stands before a paragraph: blanks and a word. The word `-` makes it one of a list, `!` one
/// that needs the eye, and what begins with `[ ]` has a box to tick.
struct Lead {
  std::size_t indent = 0;
  std::string_view word;
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
