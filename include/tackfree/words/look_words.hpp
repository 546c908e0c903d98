// Look words: what needs a look before the work goes on, a sentence or two each.
#pragma once

#include "tackfree/words/step_words.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Steps without a time, missed due dates, airing that cools the room too far, faults, and notes on
/// what may ruin the finish: the gravest first. They may hold words as the person wrote them.
std::vector<std::string> things_to_look_at(const Plan& plan, const StepWords& words);

}  // namespace tackfree
