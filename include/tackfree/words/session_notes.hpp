// Session notes: what a session's calendar entry says below its title.
#pragma once

#include "tackfree/plan/dry_coats.hpp"
#include "tackfree/words/step_words.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// What can hurt first; then the tasks with their hours, what is dry for them, how to air the room,
/// and where wet work is done the deference. Not clean yet.
std::vector<std::string> session_notes(const Plan& plan, const StepWords& words,
                                       const WorkSession& session);

}  // namespace tackfree
