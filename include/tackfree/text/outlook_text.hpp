// Text drying: the outlook of a coat at one hour, for a terminal.
#pragma once

#include "tackfree/plan/coat_outlook.hpp"
#include "tackfree/text/text_page.hpp"

#include <string>

namespace tackfree {

/// One wait in a sentence whose factors multiply out: `8 h on the label x 1.44 for the cold ...`.
std::string explanation_text(const DryingExplanation& why);

/// Which rules fail and when they next open, when each stage is reached and why then, the best
/// hour.
std::string outlook_text(const Job& job, const CoatOutlook& outlook, int columns = 80,
                         Ink ink = Ink::plain);

}  // namespace tackfree
