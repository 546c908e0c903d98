// Unlogged words: whether planned work is done, and what to do for yes and for no.
#pragma once

#include "tackfree/document/page.hpp"
#include "tackfree/evening/unlogged.hpp"
#include "tackfree/words/step_words.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// The words of the command that logs what is reported, as of the job's `now`: each as the shell
/// takes it, an option with its value.
std::vector<std::string> log_command_words(const Job& job, const Report& report, Instant now);

/// A question for each piece of work that is asked about, with both answers; what else is not in
/// the log, in a line. Nothing where there is none.
void write_questions(Page& page, const Plan& plan, const Unlogged& unlogged,
                     const StepWords& words);

}  // namespace tackfree
