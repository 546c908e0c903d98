#include "tackfree/base/problem.hpp"

#include "tackfree/base/utf8.hpp"

#include <string_view>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t longest_shown = 60;

/// The value in quotes, control characters as \xNN, cut at a UTF-8 boundary when it is long.
std::string shown(std::string_view value) {
  const bool cut = value.size() > longest_shown;
  value = head_of(value, longest_shown);
  std::string text = "\"";
  for (char c : value) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7F)
      text += fmt::format("\\x{:02X}", byte);
    else
      text += c;
  }
  text += cut ? "...\"" : "\"";
  return text;
}

}  // namespace

std::string to_text(const Problem& problem) {
  std::string text;
  if (!problem.file.empty()) {
    text += problem.file;
    if (problem.line > 0) text += fmt::format(":{}", problem.line);
    text += ": ";
  }
  if (!problem.key.empty()) text += problem.key + ": ";
  if (!problem.found.empty()) text += "found " + shown(problem.found) + "; ";
  text += problem.wanted;
  if (!problem.hint.empty()) text += "; " + problem.hint;
  return text;
}

}  // namespace tackfree
