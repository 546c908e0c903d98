// Text fumes: how strong the vapour in the room gets, when to air how long, and what would serve.
#pragma once

#include "tackfree/report/page.hpp"
#include "tackfree/report/step_words.hpp"

namespace tackfree {

/// The line above everything else when a coat must not go on like this; else nothing.
void write_stop(Page& page, const Plan& plan);

/// The section on fumes: what was reckoned with, the limits, each airing, another habit, and what
/// the estimate leaves out.
void write_fumes(Page& page, const Plan& plan, const Figures& figures);

}  // namespace tackfree
