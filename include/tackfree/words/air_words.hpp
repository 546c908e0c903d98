// Air words: what a source of the plan's air is called, and what is done to the air.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>

namespace tackfree {

/// Its name, or `typical April values`; empty for a source without either.
std::string source_words(const NamedSource& source);

/// `7 °C warmer from Thu 14 Jan, 17:00 until Fri 15 Jan, 06:00`.
std::string conditioned_words(const ConditionedAir& air, const Figures& figures);

}  // namespace tackfree
