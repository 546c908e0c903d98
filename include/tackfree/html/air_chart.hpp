// Air chart: temperature, dew point and limits, and below them how far each coat has dried.
#pragma once

#include "tackfree/html/html_page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// The legend, a strip for each week, and tables of the air day by day and of the coats that open
/// on demand. Nothing where no step is dated.
void write_air_chart(Markup& html, const Plan& plan, const StepWords& words);

}  // namespace tackfree
