// Problem: one mistake in what a person wrote, with its place and its remedy.
#pragma once

#include <string>
#include <vector>

namespace tackfree {

/// A mistake in the input. Every field that is known is filled; `line` is 0 where there is none.
struct Problem {
  std::string file{};
  int line = 0;
  std::string key{};     ///< JSON path or CSV column
  std::string found{};   ///< the value as the person wrote it
  std::string wanted{};  ///< what would be right, as a phrase after "wanted"
  std::string hint{};    ///< "did you mean ...?" or another way out
};

/// All mistakes of one run. Readers add to it and go on.
using Problems = std::vector<Problem>;

/// One problem as a person reads it: `file:line: key: found "x"; wanted y. Did you mean "z"?`
/// Control characters in what was found are shown as escapes, long values are cut.
std::string to_text(const Problem& problem);

}  // namespace tackfree
