#include "tackfree/report/page.hpp"

#include "tackfree/report/display_text.hpp"

#include <algorithm>

namespace tackfree {

namespace {

constexpr std::size_t gap = 2;
constexpr std::size_t table_indent = 2;

/// The columns that a table needs, the first cut down to what the page leaves it.
std::vector<std::size_t> table_widths(const Table& table, std::size_t columns) {
  std::vector<std::size_t> widths(table.head.size(), 0);
  const auto widen = [&](const std::vector<std::string>& row) {
    for (std::size_t i = 0; i < row.size(); ++i)
      widths.at(i) = std::max(widths.at(i), display_width(row[i]));
  };
  widen(table.head);
  for (const auto& row : table.rows) widen(row);
  widen(table.total);
  std::size_t others = table_indent;
  for (std::size_t i = 1; i < widths.size(); ++i) others += gap + widths[i];
  constexpr std::size_t least = 8;
  const std::size_t left = columns > others + least ? columns - others : least;
  widths.front() = std::min(widths.front(), left);
  return widths;
}

std::string table_row(const std::vector<std::string>& row, const std::vector<std::size_t>& widths) {
  std::string text(table_indent, ' ');
  for (std::size_t i = 0; i < row.size(); ++i)
    text +=
        i == 0 ? pad_right(widths[i], row[i]) : std::string(gap, ' ') + pad_left(widths[i], row[i]);
  return text;
}

}  // namespace

Page::Page(int columns) : columns_(static_cast<std::size_t>(std::clamp(columns, 40, 200))) {}

void Page::line(std::size_t indent, std::string_view text) {
  std::string fitting = cut_to(columns_, std::string(indent, ' ') + std::string(text));
  fitting.erase(fitting.find_last_not_of(' ') + 1);
  if (fitting.empty()) return blank();
  text_ += fitting + "\n";
}

void Page::blank() {
  if (!text_.empty() && !text_.ends_with("\n\n")) text_ += "\n";
}

void Page::heading(std::string_view title) {
  blank();
  std::string capitals = clean(title);
  for (char& c : capitals)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  line(0, capitals);
}

void Page::paragraph(Lead lead, std::string_view text) {
  const std::size_t beside = lead.word.empty() ? 0 : display_width(lead.word) + 1;
  const std::size_t hang = std::min(lead.indent + beside, columns_ / 2);
  std::string start = std::string(lead.indent, ' ') + std::string(lead.word);
  for (const std::string& words : wrapped(columns_ - hang, text)) {
    line(0, pad_right(hang, start) + words);
    start.clear();
  }
}

void Page::table(const Table& table) {
  if (table.head.empty()) return;
  const std::vector<std::size_t> widths = table_widths(table, columns_);
  line(0, table_row(table.head, widths));
  for (const auto& row : table.rows) line(0, table_row(row, widths));
  if (table.total.empty()) return;
  std::size_t width = 0;
  for (std::size_t w : widths) width += w + gap;
  line(table_indent, std::string(width - gap, '-'));
  line(0, table_row(table.total, widths));
}

}  // namespace tackfree
