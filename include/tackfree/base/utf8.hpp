// UTF-8: the characters of a text one by one, and where it may be cut.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace tackfree {

/// One character, or one byte that begins none.
struct Utf8Character {
  std::uint32_t code = 0;  ///< U+FFFD of a byte that is no UTF-8
  std::string_view bytes;
  bool valid = true;
};

/// The first character of a text that is not empty. Overlong forms, surrogates and codes beyond
/// U+10FFFF are no UTF-8: each of their bytes stands alone. Source: RFC 3629, section 3.
Utf8Character first_character(std::string_view text);

/// The longest beginning of `text` in at most `octets` bytes, 4 or more, that ends between two
/// characters; never empty unless `text` is.
std::string_view head_of(std::string_view text, std::size_t octets);

}  // namespace tackfree
