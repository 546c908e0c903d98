// Days chart: a strip for each week with each batch's work and waits above one axis of time.
#pragma once

#include "tackfree/html/html_page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// The legend, a strip for each week, and the same as a table that opens on demand. Nothing where
/// no step is dated.
void write_days_chart(Markup& html, const Plan& plan, const StepWords& words);

}  // namespace tackfree
