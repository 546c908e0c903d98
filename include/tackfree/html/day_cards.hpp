// HTML days: the work of each day with boxes to tick, and on paper room for readings and notes.
#pragma once

#include "tackfree/html/markup.hpp"
#include "tackfree/words/work_days.hpp"

namespace tackfree {

/// One block a day, which paper keeps together where it fits on a page.
void write_html_days(Markup& html, const Plan& plan, const StepWords& words, const HowTo& how_to);

}  // namespace tackfree
