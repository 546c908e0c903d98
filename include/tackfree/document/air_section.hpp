// Text air: what the plan knows of the air, where sources meet, the room's heating and its boards.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

namespace tackfree {

/// Who measured the air, which year is replayed, how sources are joined, what the room makes of it,
/// what was bridged and from when it is typical.
void write_air(Page& page, const Plan& plan, const Figures& figures);

}  // namespace tackfree
