// Shell word: a text as a shell takes it for one word of a command.
#pragma once

#include <string>

namespace tackfree {

/// `text` as it is where a POSIX shell reads it so, else in single quotes: `'seat and shelf'`.
std::string shell_word(const std::string& text);

}  // namespace tackfree
