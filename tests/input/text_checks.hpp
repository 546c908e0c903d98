// Text checks: pieces of texts found, placed and replaced, for tests of readers.
#pragma once

#include "tackfree/base/problem.hpp"

#include <string>
#include <string_view>

#include <doctest/doctest.h>

namespace tackfree {

/// `text` with its one `from` replaced.
inline std::string replaced(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  REQUIRE_MESSAGE(at != std::string::npos, std::string(from));
  REQUIRE_MESSAGE(text.find(from, at + 1) == std::string::npos, std::string(from));
  return text.replace(at, from.size(), to);
}

/// The line, from 1, on which `piece` stands in `text`.
inline int line_of(std::string_view text, std::string_view piece) {
  const std::size_t at = text.find(piece);
  REQUIRE(at != std::string_view::npos);
  int line = 1;
  for (const char c : text.substr(0, at)) line += c == '\n' ? 1 : 0;
  return line;
}

inline bool holds(std::string_view text, std::string_view piece) {
  return text.find(piece) != std::string_view::npos;
}

/// The problems as lines of text, for messages of failed checks.
inline std::string all_text(const Problems& problems) {
  std::string text;
  for (const Problem& problem : problems) text += to_text(problem) + "\n";
  return text;
}

}  // namespace tackfree
