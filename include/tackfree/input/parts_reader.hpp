// Parts reader: the parts list, a CSV file of parts and of what is cut into them.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/model/part.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// A longer parts list is not read.
inline constexpr std::size_t most_parts_rows = 100'000;

/// The parts in the text of a file, each with its features. What is wrong with a row, or does not
/// fit its part, is a Problem under the name `file`, and the row is left out.
std::vector<Part> parse_parts(std::string_view text, const std::string& file, Problems& problems);

}  // namespace tackfree
