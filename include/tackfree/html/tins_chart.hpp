// Tins chart: the tins at hand and to buy side by side, above what the job takes of them.
#pragma once

#include "tackfree/html/html_page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// What to buy as boxes to tick, with what is left over.
void write_tins(Markup& html, const Plan& plan, const Figures& figures);

/// A chart for each product of which there are tins. The shopping list of the plan is the same as
/// text.
void write_tins_chart(Markup& html, const Plan& plan, const Figures& figures);

}  // namespace tackfree
