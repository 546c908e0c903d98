// Text tonight: a foreman's answer to "what now?", on one screen.
#pragma once

#include "tackfree/plan/tonight.hpp"
#include "tackfree/report/text_page.hpp"

#include <string>

namespace tackfree {

/// What to do, what to pour, whether the air is fit, how far the coats are, what must not be done,
/// what comes then, and what to put away: 24 lines of 80 columns as a rule.
std::string tonight_text(const Plan& plan, const Tonight& tonight, int columns = 80,
                         Ink ink = Ink::plain);

}  // namespace tackfree
