// Streams: where a command prints what was asked for, and what was wrong.
#pragma once

#include "tackfree/base/file_identity.hpp"
#include "tackfree/text/text_page.hpp"

#include <optional>
#include <ostream>
#include <string_view>

namespace tackfree {

struct Streams {
  std::ostream& out;
  std::ostream& err;
  int columns = 80;
  Ink ink = Ink::plain;
  std::ostream* progress = nullptr;  ///< the terminal that errors go to; nothing for a file
  std::optional<FileIdentity> printed_to = {};  ///< the file that `out` goes to, if it is one

  /// The only way of text to the terminal, besides mistakes: nothing in it can steer one.
  void print(std::string_view text) const { out << printable(text, ink); }
};

}  // namespace tackfree
