// Days chart: strips of a few days with each batch's work and waits below one axis of time.
#pragma once

#include "tackfree/html/html_page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// The legend, the strips, and the same as a table that opens on demand. Rows without anything in
/// a strip are left out of it. Nothing where no step is dated.
void write_days_chart(Markup& html, const Plan& plan, const StepWords& words);

}  // namespace tackfree
