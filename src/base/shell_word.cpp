#include "tackfree/base/shell_word.hpp"

#include <algorithm>
#include <string_view>

namespace tackfree {

std::string shell_word(const std::string& text) {
  constexpr std::string_view plain_signs = "/._-:";
  const auto is_plain = [&](unsigned char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
           c >= 0x80 || plain_signs.find(static_cast<char>(c)) != std::string_view::npos;
  };
  if (!text.empty() && std::ranges::all_of(text, is_plain)) return text;
  std::string word = "'";
  for (const char c : text) word += c == '\'' ? "'\\''" : std::string(1, c);
  return word + "'";
}

}  // namespace tackfree
