// Text files: read whole with a named problem on failure, written whole or not at all.
#pragma once

#include "tackfree/base/problem.hpp"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// The longest input file that is read, in bytes: 16 MiB. A parts list of 100,000 rows has 4 to 10
/// MB.
inline constexpr std::size_t longest_text_file = std::size_t{16} << 20;

/// The file's bytes, or a Problem when it is missing, unreadable, too long, or no regular file:
/// reading a pipe or a device may never end.
std::optional<std::string> read_text_file(const std::filesystem::path& path, Problems& problems);

/// Writes `text` to a temporary file beside `path`, flushes it to the disk and renames it, so that
/// `path` holds the old or the new text and never a part. A symbolic link stays one: what it leads
/// to is replaced. A pipe or a device is written into. False and a Problem on failure.
bool write_text_file(const std::filesystem::path& path, std::string_view text, Problems& problems);

}  // namespace tackfree
