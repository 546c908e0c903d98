#include "tackfree/export/content_lines.hpp"

#include "tackfree/base/utf8.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t longest_line = 75;  // octets, RFC 5545, section 3.1

}  // namespace

std::string folded(std::string_view content_line) {
  std::string text;
  std::size_t room = longest_line;
  while (true) {
    const std::string_view head = head_of(content_line, room);
    text.append(head).append("\r\n");
    content_line.remove_prefix(head.size());
    if (content_line.empty()) return text;
    text += ' ';
    room = longest_line - 1;
  }
}

std::string escaped_text(std::string_view text) {
  std::string result;
  while (true) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    for (const char c : clean(text.substr(0, end))) {
      if (c == '\\' || c == ';' || c == ',') result += '\\';
      result += c;
    }
    if (end == text.size()) return result;
    result += "\\n";
    text.remove_prefix(end + 1);
  }
}

std::string property(std::string_view name, std::string_view text) {
  return folded(fmt::format("{}:{}", name, escaped_text(text)));
}

std::string utc_form(Instant at) {
  std::string text = iso_utc(at);
  std::erase_if(text, [](char c) { return c == '-' || c == ':'; });
  return text;
}

}  // namespace tackfree
