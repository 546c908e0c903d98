// Air chart: temperature, dew point, humidity and limits, and below how far each coat has dried.
#pragma once

#include "tackfree/html/html_page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// The legend, strips of a few days, and tables of the air day by day and of the coats that open on
/// demand. Humidity is drawn where the air is ever too damp for a coating in use. Nothing where no
/// step is dated.
void write_air_chart(Markup& html, const Plan& plan, const StepWords& words);

}  // namespace tackfree
