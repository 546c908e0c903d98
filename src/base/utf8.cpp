#include "tackfree/base/utf8.hpp"

#include <algorithm>
#include <array>

namespace tackfree {

namespace {

/// Bytes that a UTF-8 sequence has by its first byte; 0 when none starts so.
std::size_t sequence_length(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return 2;
  if (lead >= 0xE0 && lead <= 0xEF) return 3;
  if (lead >= 0xF0 && lead <= 0xF4) return 4;
  return 0;
}

}  // namespace

Utf8Character first_character(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const Utf8Character invalid{0xFFFD, text.substr(0, 1), false};
  const std::size_t length = sequence_length(lead);
  if (length == 0 || length > text.size()) return invalid;
  if (length == 1) return {lead, text.substr(0, 1)};
  std::uint32_t code = lead & (0xFFU >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if ((byte & 0xC0U) != 0x80U) return invalid;
    code = (code << 6U) | (byte & 0x3FU);
  }
  constexpr std::array<std::uint32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (code < least.at(length) || code > 0x10FFFF || surrogate) return invalid;
  return {code, text.substr(0, length)};
}

std::string_view head_of(std::string_view text, std::size_t octets) {
  if (text.size() <= octets) return text;
  // A character has four bytes at most: what goes on longer is no UTF-8 and is cut anywhere.
  constexpr std::size_t longest_tail = 3;
  for (std::size_t back = 0; back <= std::min(longest_tail, octets); ++back)
    if ((static_cast<unsigned char>(text[octets - back]) & 0xC0U) != 0x80U)
      return text.substr(0, octets - back);
  return text.substr(0, octets);
}

}  // namespace tackfree
