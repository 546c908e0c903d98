// Holds: whether a text has a piece in it.
#pragma once

#include <string_view>

namespace tackfree {

inline bool holds(std::string_view text, std::string_view piece) {
  return text.find(piece) != std::string_view::npos;
}

}  // namespace tackfree
