#include "tackfree/words/display_text.hpp"

#include "tackfree/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";  // U+FFFD
constexpr std::string_view ellipsis = "\xE2\x80\xA6";     // U+2026

struct Range {
  std::uint32_t first, last;
};

template <std::size_t N>
bool within(const std::array<Range, N>& ranges, std::uint32_t code) {
  return std::any_of(ranges.begin(), ranges.end(),
                     [code](Range r) { return r.first <= code && code <= r.last; });
}

template <class Visit>
void each_character(std::string_view text, Visit visit) {
  while (!text.empty()) {
    const Utf8Character c = first_character(text);
    visit(c);
    text.remove_prefix(c.bytes.size());
  }
}

bool is_blank(std::uint32_t code) {
  return (code >= 0x09 && code <= 0x0D) || code == 0x20 || code == 0x85 || code == 0x2028 ||
         code == 0x2029;
}

/// Controls, soft hyphen, zero-width and direction marks, byte order mark, variation selectors,
/// tags.
bool is_invisible(std::uint32_t code) {
  constexpr std::array<Range, 11> ranges{{{0x00, 0x1F},
                                          {0x7F, 0x9F},
                                          {0xAD, 0xAD},
                                          {0x061C, 0x061C},
                                          {0x180E, 0x180E},
                                          {0x200B, 0x200F},
                                          {0x202A, 0x202E},
                                          {0x2060, 0x206F},
                                          {0xFE00, 0xFE0F},
                                          {0xFEFF, 0xFEFF},
                                          {0xE0000, 0xE0FFF}}};
  return within(ranges, code);
}

std::size_t width_of(std::uint32_t code) {
  constexpr std::uint32_t first_special = 0x0300;
  if (code < first_special) return 1;
  // Marks of the Unicode character database (Mn, Me) for Latin, Greek, Cyrillic, Hebrew, Arabic,
  // Devanagari, Bengali, Thai and kana, and the symbols that go over any letter.
  constexpr std::array<Range, 36> combining{
      {{0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD}, {0x05BF, 0x05BF}, {0x05C1, 0x05C2},
       {0x05C4, 0x05C5}, {0x05C7, 0x05C7}, {0x0610, 0x061A}, {0x064B, 0x065F}, {0x0670, 0x0670},
       {0x06D6, 0x06DC}, {0x06DF, 0x06E4}, {0x06E7, 0x06E8}, {0x06EA, 0x06ED}, {0x0900, 0x0902},
       {0x093A, 0x093A}, {0x093C, 0x093C}, {0x0941, 0x0948}, {0x094D, 0x094D}, {0x0951, 0x0957},
       {0x0962, 0x0963}, {0x0981, 0x0981}, {0x09BC, 0x09BC}, {0x09C1, 0x09C4}, {0x09CD, 0x09CD},
       {0x09E2, 0x09E3}, {0x09FE, 0x09FE}, {0x0E31, 0x0E31}, {0x0E34, 0x0E3A}, {0x0E47, 0x0E4E},
       {0x1AB0, 0x1ACE}, {0x1DC0, 0x1DFF}, {0x20D0, 0x20F0}, {0x302A, 0x302D}, {0x3099, 0x309A},
       {0xFE20, 0xFE2F}}};
  // The ranges that fmt counts as two columns; they agree with wcwidth.
  constexpr std::array<Range, 14> wide{{{0x1100, 0x115F},
                                        {0x2329, 0x232A},
                                        {0x2E80, 0x303E},
                                        {0x3040, 0xA4CF},
                                        {0xAC00, 0xD7A3},
                                        {0xF900, 0xFAFF},
                                        {0xFE10, 0xFE19},
                                        {0xFE30, 0xFE6F},
                                        {0xFF00, 0xFF60},
                                        {0xFFE0, 0xFFE6},
                                        {0x1F300, 0x1F64F},
                                        {0x1F680, 0x1F6FF},
                                        {0x1F900, 0x1FAFF},
                                        {0x20000, 0x3FFFD}}};
  if (within(combining, code)) return 0;
  return within(wide, code) ? 2 : 1;
}

constexpr std::string_view no_break_space = "\u00A0";

void replace_all(std::string& text, std::string_view what, std::string_view by) {
  for (std::size_t at = text.find(what); at != std::string::npos;
       at = text.find(what, at + by.size()))
    text.replace(at, what.size(), by);
}

/// Printable ASCII all along, as nearly every text is: each byte is a character of one column.
bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~'; });
}

/// Width of text that is clean already.
std::size_t width_of_clean(std::string_view text) {
  if (is_plain(text)) return text.size();
  std::size_t width = 0;
  each_character(text, [&](const Utf8Character& c) { width += width_of(c.code); });
  return width;
}

std::string cut_clean(std::size_t columns, std::string_view text) {
  if (width_of_clean(text) <= columns) return std::string(text);
  if (columns == 0) return {};
  std::string result;
  std::size_t width = 0;
  while (!text.empty()) {
    const Utf8Character c = first_character(text);
    width += width_of(c.code);
    if (width > columns - 1) break;
    result += c.bytes;
    text.remove_prefix(c.bytes.size());
  }
  return result.append(ellipsis);
}

}  // namespace

std::string clean(std::string_view text) {
  if (is_plain(text)) return std::string(text);
  std::string result;
  result.reserve(text.size());
  each_character(text, [&](const Utf8Character& c) {
    if (is_blank(c.code))
      result += ' ';
    else if (!c.valid)
      result += replacement;
    else if (!is_invisible(c.code))
      result += c.bytes;
  });
  return result;
}

std::string unseen_escaped(std::string_view json) {
  constexpr std::uint32_t beyond_first_plane = 0x10000;
  std::string result;
  result.reserve(json.size());
  each_character(json, [&](const Utf8Character& c) {
    const bool seen =
        c.code == ' ' || c.code == '\n' || (!is_blank(c.code) && !is_invisible(c.code));
    if (seen)
      result += c.bytes;
    else if (c.code < beyond_first_plane)
      result += fmt::format("\\u{:04x}", c.code);
    else  // a pair of surrogates: RFC 8259, section 7
      result +=
          fmt::format("\\u{:04x}\\u{:04x}", 0xD7C0 + (c.code >> 10U), 0xDC00 + (c.code & 0x3FFU));
  });
  return result;
}

std::size_t display_width(std::string_view text) { return width_of_clean(clean(text)); }

std::string cut_to(std::size_t columns, std::string_view text) {
  return cut_clean(columns, clean(text));
}

std::string cut_inside(std::size_t columns, std::string_view text) {
  std::string all = clean(text);
  std::size_t width = width_of_clean(all);
  if (width <= columns) return all;
  // The longest end that fits and does not begin with a mark that belongs to what was cut.
  std::string_view tail = all;
  while (!tail.empty()) {
    const Utf8Character c = first_character(tail);
    if (width_of(c.code) > 0 && width <= columns / 2) break;
    width -= width_of(c.code);
    tail.remove_prefix(c.bytes.size());
  }
  return cut_clean(columns - width, all) + std::string(tail);
}

std::string pad_right(std::size_t columns, std::string_view text) {
  std::string cut = cut_to(columns, text);
  return cut.append(columns - width_of_clean(cut), ' ');
}

std::string pad_left(std::size_t columns, std::string_view text) {
  const std::string cut = cut_to(columns, text);
  return std::string(columns - width_of_clean(cut), ' ') + cut;
}

std::vector<std::string> wrapped(std::size_t columns, std::string_view text) {
  std::vector<std::string> lines;
  const std::string all = clean(text);
  std::string_view rest = all;
  std::string line;
  std::size_t width = 0;
  while (!rest.empty()) {
    const std::size_t space = std::min(rest.find(' '), rest.size());
    const std::string word = cut_clean(columns, rest.substr(0, space));
    rest.remove_prefix(std::min(space + 1, rest.size()));
    if (word.empty()) continue;
    const std::size_t word_width = width_of_clean(word);
    if (!line.empty() && width + 1 + word_width > columns) {
      lines.push_back(std::exchange(line, {}));
      width = 0;
    }
    if (!line.empty()) {
      line += ' ';
      ++width;
    }
    line += word;
    width += word_width;
  }
  if (!line.empty()) lines.push_back(line);
  for (std::string& each : lines) replace_all(each, no_break_space, " ");
  return lines;
}

std::string capitalized(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string first_sentence(const std::string& text) {
  const std::size_t end = text.find(". ");
  return end == std::string::npos ? text : text.substr(0, end + 1);
}

std::string held_together(std::string text) {
  replace_all(text, " ", no_break_space);
  return text;
}

}  // namespace tackfree
