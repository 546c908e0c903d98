// Outlook section: what comes of a coat at one hour.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/plan/coat_outlook.hpp"

#include <string>

namespace tackfree {

/// One wait in a sentence whose factors multiply out: `8 h on the label x 1.44 for the cold ...`.
std::string explanation_text(const DryingExplanation& why);

/// Which rules fail and when they next open, when each stage is reached and why then, the best
/// hour.
void write_outlook(Page& page, const Job& job, const CoatOutlook& outlook);

}  // namespace tackfree
