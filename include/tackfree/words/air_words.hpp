// Air words: what a source of the plan's air is called.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// Its name, or `typical April values`; empty for a source without either.
std::string source_words(const NamedSource& source);

}  // namespace tackfree
