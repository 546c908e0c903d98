// Dead end section: steps that found no time, what is in their way, and what would help.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

#include <vector>

namespace tackfree {

/// Steps that a rule forbids, each with the way out, in one list those that wait for them, and what
/// would help with what to write into the job.
void write_unplaced(Page& page, const Plan& plan, const StepWords& words);

/// The same shortly, for answers that are no plan: the first step that a rule forbids, and what
/// would help it. Nothing where every step has a time.
void write_dead_end(Page& page, const DatedWork& work, const std::vector<Remedy>& remedies,
                    const WorkWords& words);

}  // namespace tackfree
