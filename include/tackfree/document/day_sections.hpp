// Text days: what to do next, day by day, and when the finish will bear what.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// That the word before what to know first takes at least: `Next`, `Ready`, `Buy`.
inline constexpr std::size_t first_columns = 5;

/// Name and note of the job, and the time it is planned from.
void write_title(Page& page, const Plan& plan, const Figures& figures);

/// What to know first: what must not be done, the next step, when it is ready, what to buy, and the
/// hours it takes.
void write_first(Page& page, const Plan& plan, const StepWords& words);

/// One block a day: a line for each stretch of work, set-up and clean-up with it, and below it
/// what to pour and why it waited.
void write_days(Page& page, const Plan& plan, const StepWords& words, const HowTo& how_to);

/// For each batch the day on which it may be moved, used, fitted, stacked, and is cured.
void write_milestones(Page& page, const Plan& plan, const StepWords& words);

}  // namespace tackfree
