// Text page: lines for a terminal or a garage wall: wrapped paragraphs and straight columns.
#pragma once

#include "tackfree/document/page.hpp"

namespace tackfree {

/// Whether headings and leads that need the eye are set off by the codes of ANSI terminals. Nothing
/// is told by them alone.
enum class Ink { plain, coloured };

/// Text on its way to a terminal: each line is cleaned once more, whoever wrote it. Only with
/// colour do the codes that a page sets stay.
std::string printable(std::string_view text, Ink ink);

/// No line is wider than the page, and nothing of a text but its cleaned characters is left.
class TextPage final : public Page {
 public:
  /// Pages are 40 to 200 columns wide.
  explicit TextPage(int columns, Ink ink = Ink::plain);

  const std::string& text() const { return text_; }

  std::size_t columns() const override { return columns_; }
  /// What does not fit is cut.
  void line(std::size_t indent, std::string_view text) override;
  void blank() override;
  /// In capitals on its own line, after a blank line.
  void heading(std::string_view title) override;
  void subheading(std::string_view title) override;  ///< wrapped
  /// Lines below the first begin at the same column.
  void paragraph(Lead lead, std::string_view text) override;
  /// Where it is too wide for the page, a line for each value below the name of its row.
  void table(const Table& table) override;

 private:
  void cards(const Table& table);
  std::string fitting(std::string_view text) const;
  void coloured(std::string_view code, std::string_view whole, std::size_t octets);

  std::size_t columns_;
  Ink ink_;
  std::string text_;
};

}  // namespace tackfree
