// Text: the plan as lines for a terminal or for paper on the garage wall.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/text/text_page.hpp"

#include <string>

namespace tackfree {

/// The whole plan; no line is wider than `columns` (40 to 200), no control character is left but
/// the codes of a coloured page.
std::string text_report(const Plan& plan, int columns = 80, Ink ink = Ink::plain);

/// What to buy alone: the plan's own lines on litres, tins and all else to have at hand.
std::string text_shopping_list(const Plan& plan, int columns = 80, Ink ink = Ink::plain);

}  // namespace tackfree
