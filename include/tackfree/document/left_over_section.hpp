// Text left over: what stays in the tins, until when it keeps, and how to get rid of the rest.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/plan/work_at_hand.hpp"
#include "tackfree/words/figures.hpp"

namespace tackfree {

/// What is likely left of each coating and thinner. Nothing where there is none of either.
void write_tins_left(Page& page, const Plan& plan, const Figures& figures);

/// The same, and then what to do with remains, wash and rags.
void write_left_over(Page& page, const Plan& plan, const Figures& figures);

/// What is in the tins now, by the log.
void write_shelf(Page& page, const WorkAtHand& work);

}  // namespace tackfree
