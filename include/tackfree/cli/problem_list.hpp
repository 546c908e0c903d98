// Problem list: mistakes as a person reads them, file by file, many of one kind as one message.
#pragma once

#include "tackfree/base/problem.hpp"

#include <iosfwd>

namespace tackfree {

/// Each problem on a line, file by file in the order they were first named, each from its top. More
/// than ten of one kind in a file (the same key and the same remedy) are one message, with their
/// count and the places of the first three.
void print_problems(Problems problems, std::ostream& to);

/// What is wrong with lines of the log that a plan does without; nothing where nothing is.
void print_left_out(const Problems& problems, std::ostream& to);

}  // namespace tackfree
