// Fuzzed: what each fuzz target reads of the fuzzer's bytes, and what must hold whatever they are.
#pragma once

#include "tackfree/base/problem.hpp"

#include <string>
#include <string_view>

namespace tackfree::fuzz {

/// Reads `text` as its kind of file. Each target has one; libFuzzer calls it with text after text.
void read(std::string_view text);

/// Ends the program with `what`, which is a finding, unless it holds.
void must(bool holds, std::string_view what);

/// Every Problem says where it is and what would be right: `file` is the name that was read.
void must_help(const Problems& problems, std::string_view file);

}  // namespace tackfree::fuzz
