// Session words: a session of work on one line, and its tasks with their hours.
#pragma once

#include "tackfree/plan/dry_coats.hpp"
#include "tackfree/words/step_words.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace tackfree {

/// `Ana, Ben: Coat 1: seat (back), frame; sand: shelf`: coats first, then other work; who, where
/// there are several people. At most `columns` wide; what does not fit is `and more`.
std::string session_title(const Plan& plan, const StepWords& words, const WorkSession& session,
                          std::size_t columns);

/// `Ana, Ben: `; empty where one person does all.
std::string people_words(const Plan& plan, const WorkSession& session);

/// `seat: sand bare wood, P120 to P220`, `set up: varnish, brush`; not clean yet.
std::string task_words(const Plan& plan, const StepWords& words, const WorkTask& task);

/// `dry to sand from 11:30 am: frame: coat 2 of 3`; with the day where it is not that of
/// `seen_from`.
std::string dry_words(const Plan& plan, const StepWords& words, const DryCoat& dry,
                      Instant seen_from);

/// With a capital letter at the beginning, where that is one of ASCII.
std::string capitalised(std::string text);

}  // namespace tackfree
