#include "tackfree/text/text_page.hpp"

#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <array>

namespace tackfree {

namespace {

constexpr std::size_t gap = 2;
constexpr std::size_t table_indent = 2;

// Source: ECMA-48, 8.3.117, select graphic rendition.
constexpr std::string_view ink_off = "\x1b[0m";
constexpr std::string_view ink_heading = "\x1b[1;36m";
constexpr std::string_view ink_subheading = "\x1b[1m";
constexpr std::string_view ink_warning = "\x1b[1;33m";
constexpr std::string_view ink_danger = "\x1b[1;31m";

std::string_view ink_of(Lead::Kind kind) {
  if (kind == Lead::Kind::danger) return ink_danger;
  return kind == Lead::Kind::look || kind == Lead::Kind::warning ? ink_warning : ink_subheading;
}

/// What stands before the first line of a paragraph.
std::string words_before(const Lead& lead) {
  const auto filled = [&](std::string_view label) {
    return pad_right(std::max(lead.columns, display_width(label)), label);
  };
  const auto flush_right = [&] {
    return pad_left(std::max(lead.columns, display_width(lead.label)), lead.label);
  };
  switch (lead.kind) {
    case Lead::Kind::plain:
      break;
    case Lead::Kind::item:
      return "-";
    case Lead::Kind::look:
      return "!";
    case Lead::Kind::question:
      return "?";
    case Lead::Kind::to_tick:
      return "[ ] " + flush_right();
    case Lead::Kind::ticked:
      return "[x] " + filled(lead.label);
    case Lead::Kind::introduced:
      return filled(std::string(lead.label) + ":");
    case Lead::Kind::timed:
      return flush_right() + " ";
    case Lead::Kind::labelled:
    case Lead::Kind::warning:
    case Lead::Kind::danger:
      return filled(lead.label);
  }
  return {};
}

constexpr std::array ink_codes{ink_off, ink_heading, ink_subheading, ink_warning, ink_danger};

/// The columns that a table needs, the first cut down to what the page leaves it; none where the
/// page is too narrow for all of them.
std::vector<std::size_t> table_widths(const Table& table, std::size_t columns) {
  constexpr std::size_t least = 12;
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
  if (others + std::min(widths.front(), least) > columns) return {};
  widths.front() = std::min(widths.front(), columns - others);
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

std::string printable(std::string_view text, Ink ink) {
  std::string result;
  result.reserve(text.size());
  std::size_t begin = 0;
  const auto keep = [&](std::size_t at, std::size_t octets) {
    result.append(clean(text.substr(begin, at - begin))).append(text.substr(at, octets));
    begin = at + octets;
  };
  for (std::size_t at = text.find_first_of("\n\x1b"); at != std::string_view::npos;
       at = text.find_first_of("\n\x1b", std::max(at + 1, begin))) {
    if (text[at] == '\n') {
      keep(at, 1);
      continue;
    }
    const auto code = std::ranges::find_if(
        ink_codes, [&](std::string_view each) { return text.substr(at).starts_with(each); });
    if (ink == Ink::coloured && code != ink_codes.end()) keep(at, code->size());
  }
  return result.append(clean(text.substr(begin)));
}

TextPage::TextPage(int columns, Ink ink)
    : columns_(static_cast<std::size_t>(std::clamp(columns, 40, 200))), ink_(ink) {}

std::string TextPage::fitting(std::string_view text) const {
  std::string fitting = cut_to(columns_, text);
  fitting.erase(fitting.find_last_not_of(' ') + 1);
  return fitting;
}

/// The line `whole` with its first `octets` in the ink of `code`.
void TextPage::coloured(std::string_view code, std::string_view whole, std::size_t octets) {
  octets = std::min(octets, whole.size());
  if (ink_ == Ink::plain || octets == 0) {
    text_.append(whole).append("\n");
    return;
  }
  text_.append(code).append(whole.substr(0, octets)).append(ink_off);
  text_.append(whole.substr(octets)).append("\n");
}

void TextPage::line(std::size_t indent, std::string_view text) {
  const std::string whole = fitting(std::string(indent, ' ') + std::string(text));
  if (whole.empty()) return blank();
  text_.append(whole).append("\n");
}

void TextPage::blank() {
  if (!text_.empty() && !text_.ends_with("\n\n")) text_ += "\n";
}

void TextPage::heading(std::string_view title) {
  blank();
  std::string capitals = fitting(title);
  for (char& c : capitals)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  if (!capitals.empty()) coloured(ink_heading, capitals, capitals.size());
}

void TextPage::subheading(std::string_view title) {
  for (const std::string& words : wrapped(columns_, title))
    coloured(ink_subheading, words, words.size());
}

void TextPage::paragraph(Lead lead, std::string_view text) {
  const std::string before = words_before(lead);
  const std::size_t beside = before.empty() ? 0 : display_width(before) + 1;
  const std::size_t hang = std::min(lead.indent + beside, columns_ / 2);
  std::string start = std::string(lead.indent, ' ') + before;
  for (const std::string& words : wrapped(columns_ - hang, text)) {
    const std::string begin = pad_right(hang, start);
    coloured(ink_of(lead.kind), fitting(begin + words), start.empty() ? 0 : begin.size());
    start.clear();
  }
}

/// Row by row its name, and below it a line for each value, with the word of its column.
void TextPage::cards(const Table& table) {
  const auto write = [&](const std::vector<std::string>& row) {
    if (row.empty()) return;
    for (const std::string& words : wrapped(columns_ - table_indent, row.front())) {
      const std::string name = fitting(std::string(table_indent, ' ') + words);
      coloured(ink_subheading, name, name.size());
    }
    for (std::size_t i = 1; i < row.size(); ++i)
      if (!row[i].empty() && row[i] != "-")
        paragraph(Lead::plain(2 * table_indent), table.head[i] + ": " + row[i]);
  };
  for (const auto& row : table.rows) write(row);
  write(table.total);
}

void TextPage::table(const Table& table) {
  if (table.head.empty()) return;
  const std::vector<std::size_t> widths = table_widths(table, columns_);
  if (widths.empty()) return cards(table);
  const std::string head = fitting(table_row(table.head, widths));
  coloured(ink_subheading, head, head.size());
  for (const auto& row : table.rows) line(0, table_row(row, widths));
  if (table.total.empty()) return;
  std::size_t width = 0;
  for (std::size_t w : widths) width += w + gap;
  line(table_indent, std::string(width - gap, '-'));
  line(0, table_row(table.total, widths));
}

}  // namespace tackfree
