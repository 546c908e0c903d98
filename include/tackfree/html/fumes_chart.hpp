// Fumes chart: the room's vapour against its limits, and its course after each stretch of coating.
#pragma once

#include "tackfree/html/markup.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// Bars for the four limits, and a small chart for each stretch. Nothing where the room was not
/// judged. The section's own words and table are the same as text.
void write_fumes_chart(Markup& html, const Plan& plan, const Figures& figures);

}  // namespace tackfree
