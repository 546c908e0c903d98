// Gone options: what has replaced an option that earlier versions had.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// The mistake to print, with its line end, where one of the arguments is such an option.
std::optional<std::string> gone_option(const std::vector<std::string>& arguments);

}  // namespace tackfree
