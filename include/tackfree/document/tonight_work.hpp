// Tonight work: one stretch of work in few lines, with every coat, its pour and its clock.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/evening/tonight.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// That the word before each answer takes at least: `Do`, `Don't`, `Airing`.
inline constexpr std::size_t answer_columns = 6;

/// The work of tonight's stretch: the grits of one piece on one line; every coat with what to pour,
/// when to wipe it off and until when its pot is good; who does it, where there are several people.
/// Where there is much else to do, its last lines are counted only.
void write_tonight_work(Page& page, const Plan& plan, const Tonight& tonight,
                        const StepWords& words);

/// Coats just put on whose wiping off or pot still goes by the clock.
void write_running_clocks(Page& page, const Plan& plan, const Tonight& tonight,
                          const StepWords& words);

/// What went wrong and is not put right yet, with what to do about it.
void write_open_faults(Page& page, const Plan& plan, const Tonight& tonight,
                       const StepWords& words);

}  // namespace tackfree
