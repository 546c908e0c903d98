// Text materials: coats and film, litres and tins, other things to buy, and grits.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// For each batch and coating: how many coats and why, wet and dry film, aim, cap and verdict.
void write_films(Page& page, const Plan& plan, const Figures& figures);

/// Each coating coat by coat, then what the tools keep and what to buy; thinner and cleaner.
void write_products(Page& page, const Plan& plan, const Figures& figures);

/// The other things to have at hand, with boxes to tick.
void write_sundries(Page& page, const Plan& plan, const Figures& figures);

/// Both.
void write_shopping(Page& page, const Plan& plan, const Figures& figures);

/// What to buy alone: the title, all tins in a line, the shopping section and what is
/// left.
void write_shopping_list(Page& page, const Plan& plan, const Figures& figures);

/// The grits of each batch, on bare wood and before each coat.
void write_grits(Page& page, const Plan& plan);

}  // namespace tackfree
