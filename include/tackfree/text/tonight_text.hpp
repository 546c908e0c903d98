// Text tonight: a foreman's answer to "what now?", on one screen.
#pragma once

#include "tackfree/evening/tonight.hpp"
#include "tackfree/text/text_page.hpp"

#include <string>

namespace tackfree {

/// What to do and to pour, what must not be done until when, when finished batches may be used,
/// airing by the clock, what comes then, what to put away, and the oily rags: 25 lines of 80
/// columns as a rule.
std::string tonight_text(const Plan& plan, const Tonight& tonight, int columns = 80,
                         Ink ink = Ink::plain);

}  // namespace tackfree
