// Page: lines of text for a terminal or a garage wall: headings, paragraphs and straight columns.
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

/// What stands before a paragraph: blanks and a word.
struct Lead {
  std::size_t indent = 0;
  std::string_view word;
};

class Page {
 public:
  /// Pages are 40 to 200 columns wide.
  explicit Page(int columns);

  std::size_t columns() const { return columns_; }
  const std::string& text() const { return text_; }

  /// One line, cleaned, after `indent` blanks; what does not fit is cut. Empty text is a blank
  /// line.
  void line(std::size_t indent, std::string_view text);
  /// A blank line, never two in a row.
  void blank();
  /// A heading in capitals on its own line, after a blank line.
  void heading(std::string_view title);
  /// The lead once, then the wrapped text beside it and below it at the same column.
  void paragraph(Lead lead, std::string_view text);
  void table(const Table& table);

 private:
  std::size_t columns_;
  std::string text_;
};

}  // namespace tackfree
