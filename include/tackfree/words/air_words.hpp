// Air words: what a source of the plan's air is called, and which typical months serve for others.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// Its name, or `typical April values`; empty for a source without either.
std::string source_words(const NamedSource& source);

/// Whose values a month without its own has.
std::string held_month_words(const HeldMonth& held);

}  // namespace tackfree
