// Text progress: what is done, what moved since the last plan, and what the log has taught.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/words/step_words.hpp"

namespace tackfree {

/// What is done by the log, the rates learnt from it with the questions it leaves, and the steps
/// that moved, with how far and why. Nothing without a log and a last plan.
void write_progress(Page& page, const Plan& plan, const StepWords& words);

}  // namespace tackfree
