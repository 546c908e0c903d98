// Air words: what sources of the air are called, which months serve for others, what is done to it.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>

namespace tackfree {

/// Its name, or `typical April values`; empty for a source without either.
std::string source_words(const NamedSource& source);

/// What air that nobody has read is known by: `by the forecast`.
std::string record_words(const AirRecord& air);

/// Whose values a month without its own has.
std::string held_month_words(const HeldMonth& held);

/// `7 °C warmer from Thu 14 Jan, 17:00 until Fri 15 Jan, 06:00`.
std::string conditioned_words(const ConditionedAir& air, const Figures& figures);

}  // namespace tackfree
