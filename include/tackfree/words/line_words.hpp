// Line words: why a line of a session stands where it does, and by when its coat must be on.
#pragma once

#include "tackfree/words/session_lines.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Why not sooner: of a coat and its dusting off, the coat's reason. Empty where nothing held it.
std::string why_words(const WorkLine& line, const Plan& plan, const StepWords& words,
                      Reasons reasons);

/// For each coat of the line that the coat below takes unsanded until a moment: which moment, and
/// how long that is.
std::vector<std::string> put_on_by_words(const WorkLine& line, const Plan& plan,
                                         const Figures& figures);

}  // namespace tackfree
