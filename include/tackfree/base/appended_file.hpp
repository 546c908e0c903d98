// Appended file: lines only ever added, under a lock, on disk before they are confirmed.
#pragma once

#include "tackfree/base/files.hpp"
#include "tackfree/base/locked_file.hpp"
#include "tackfree/base/problem.hpp"

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// The file's text, read while nobody writes; nothing in it where there is no such file yet. A
/// Problem when it cannot be read, or stays locked.
std::optional<AppendedText> read_appended(const std::filesystem::path& path, Problems& problems,
                                          const LockPatience& patience = {});

/// How a kind of file gets its next line.
struct LineMaker {
  /// Given the lines that stand there, the new one without a line feed; nothing to give up.
  std::function<std::optional<std::string>(std::string_view)> line_for;
  /// Is this last line whole but for its line feed, as an editor may leave it?
  std::function<bool(const std::string&)> is_whole;
};

/// Adds one line while nobody else reads or writes the file. What a torn last line left is moved to
/// the file `PATH.torn` beside it first; a last line that lacks only its line feed gets it. True
/// once the line has reached the disk; else false, with a Problem unless the maker gave up, and the
/// file holds what it held before.
bool append_line(const std::filesystem::path& path, const LineMaker& maker, Problems& problems,
                 const LockPatience& patience = {});

}  // namespace tackfree
