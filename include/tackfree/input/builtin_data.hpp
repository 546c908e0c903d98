// Built-in data: the files of data/ as compiled into the program.
#pragma once

#include "tackfree/base/files.hpp"

namespace tackfree {

/// Where they lie among the files that are built in.
inline constexpr const char* built_in_folder = "data";

/// `data/NAME` as it was at build time.
const Files& built_in_files();

}  // namespace tackfree
