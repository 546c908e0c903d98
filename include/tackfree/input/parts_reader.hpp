// Parts reader: the parts list, a CSV file of parts and of what is cut into them.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/part.hpp"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// A longer parts list is not read.
inline constexpr std::size_t most_parts_rows = 100'000;

/// The parts of the file at `path`, each with its features. What is wrong with a row,
/// or does not fit its part, is a Problem, and the row is left out.
std::vector<Part> read_parts(const std::filesystem::path& path, Problems& problems);

/// The same from the text of a file, named `file` in Problems.
std::vector<Part> parse_parts(std::string_view text, const std::string& file, Problems& problems);

}  // namespace tackfree
