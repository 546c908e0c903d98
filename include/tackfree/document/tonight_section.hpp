// Tonight section: a foreman's answer to "what now?", on one screen.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/evening/tonight.hpp"

namespace tackfree {

/// What to do and to pour, what must not be done until when, when finished batches may be used,
/// airing by the clock, what comes then, what to put away, and the oily rags: 25 lines of 80
/// columns as a rule.
void write_tonight(Page& page, const Plan& plan, const Tonight& tonight);

}  // namespace tackfree
