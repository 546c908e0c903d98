// HTML page: headings, paragraphs, lists and tables of a report as elements of HTML.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/html/markup.hpp"

namespace tackfree {

/// Paragraphs with leads of one kind that follow each other are one list: of points, of warnings,
/// of boxes to tick, or of terms with their descriptions, which all other labels are.
class HtmlPage final : public Page {
 public:
  /// How sections look from the next heading on: open to everybody; behind their heading, which
  /// unfolds them; or the same, unfolded already.
  enum class Sections { plain, folded, unfolded };

  /// Writes into `html`, which must outlive this.
  explicit HtmlPage(Markup& html) : html_(html) {}

  std::size_t columns() const override { return 200; }
  void line(std::size_t indent, std::string_view text) override;
  void blank() override { end_list(); }
  /// A heading begins a section, which ends at the next heading or at end().
  void heading(std::string_view title) override;
  void sections(Sections look) { sections_ = look; }
  void subheading(std::string_view title) override;
  void paragraph(Lead lead, std::string_view text) override;
  /// One that is wider than a phone becomes a card for each row there.
  void table(const Table& table) override;

  /// Ends the list and the section that are open.
  void end();

 private:
  enum class List { none, points, warnings, boxes, terms };
  void begin_list(List list);
  void end_list();
  /// A box to tick, with its amount where there is one.
  void box(std::string_view amount, std::string_view text);
  void term(std::string_view label, std::string_view text, std::string_view meaning = {});

  Markup& html_;
  List list_ = List::none;
  Sections sections_ = Sections::plain;
  int open_ = 0;  ///< elements of the section that is open
};

/// What a name of the program or a heading is called inside a link: small letters and hyphens.
std::string anchor_of(std::string_view title);

}  // namespace tackfree
