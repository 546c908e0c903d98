// First screen: what is dangerous, what to do now, when it is ready, what to buy, what comes next.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

#include <cstddef>

namespace tackfree {

/// Lines of 80 columns that it takes at most: with its title and the last lines, 50.
inline constexpr std::size_t most_first_lines = 41;

/// Every danger and warning in a line each, the gravest first; what needs a look; now, ready, buy;
/// the next three sessions with their hours and their warnings. What there is too much of is
/// counted: never a danger or a warning.
void write_first_screen(Page& page, const Plan& plan, const StepWords& words);

/// Of a part that is empty in this plan.
void write_nothing(Page& page);

/// How to see the rest, for whoever reads it on a terminal.
void write_rest(Page& page);

}  // namespace tackfree
