// Text chart: the days of each batch in plain characters, a block of lines for each week.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// Each character is three hours, or two where the page has room for them: `#` work, `~` drying,
/// `x` air unfit for the coat, `.` waiting, `=` hours of the person. Nothing where no step is dated
/// or the page is narrower than a week.
void write_text_chart(Page& page, const Plan& plan, const StepWords& words);

}  // namespace tackfree
