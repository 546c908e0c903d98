// Built-in data: the files of data/ as compiled into the program.
#pragma once

#include <optional>
#include <string_view>

namespace tackfree {

/// The text of `data/NAME` at build time, or nothing when there is no such file.
std::optional<std::string_view> builtin_data(std::string_view name);

}  // namespace tackfree
