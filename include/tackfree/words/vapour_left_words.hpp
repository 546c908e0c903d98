// Vapour-left words: what to heed where sanding or fitting comes while a wet coat gives off vapour.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <string>

namespace tackfree {

/// `Vapour of the wet coats stays in the room until 10:33 by this estimate: sand outdoors, or
/// later.` Empty for other work, in a room that holds less, and where no vapour was estimated.
std::string vapour_left_words(const Plan& plan, const DatedStep& step, const Figures& figures);

}  // namespace tackfree
