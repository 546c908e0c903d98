// Text fumes: how strong the vapour in the room gets, when to air how long, and what would serve.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/work_days.hpp"

namespace tackfree {

/// The lines above everything else: a coat that must not go on like this, a heater that may light
/// its vapour, and the cautions that come first. Nothing where there are none.
void write_stop(Page& page, const Plan& plan);

/// The time that begins with this work: the set-up for coats with vapour that burns, or the first
/// of them where nothing is set up. Nothing for other work, and in a job that has nothing to turn
/// off.
const FlammableTime* flammable_time_from(const Plan& plan, const WorkEntry& entry);

/// What is off, by name, before the tin is opened, and until when; what would light spray mist is
/// out of the room. No full stop.
std::string off_text(const Plan& plan, const FlammableTime& time);

/// The section on fumes: what was counted, the limits, each airing, another habit, and what
/// the estimate leaves out.
void write_fumes(Page& page, const Plan& plan, const Figures& figures);

}  // namespace tackfree
