// Text fumes: how strong the vapour in the room gets, when to air how long, and what would serve.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// By the signal word of the caution.
Lead lead_of(const Caution& caution, std::size_t columns = 0);

/// A coat that must not go on like this, and the hours in which a heater may light its vapour.
void write_vapour_dangers(Page& page, const Plan& plan);

/// The lines above everything else: a coat that must not go on like this, a heater that may light
/// its vapour, and the cautions that come first. Nothing where there are none.
void write_stop(Page& page, const Plan& plan);

/// The section on fumes: what was counted, the limits, each airing, another habit, and what
/// the estimate leaves out.
void write_fumes(Page& page, const Plan& plan, const Figures& figures);

}  // namespace tackfree
