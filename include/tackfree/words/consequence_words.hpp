// Consequence words: what comes of work as it was reported, a sentence or two.
#pragma once

#include "tackfree/evening/log_entry.hpp"

#include <string>

namespace tackfree {

/// What to do about a fault, by `line` of the finishing data; where that is empty, whom to ask.
std::string advice_words(const std::string& line);

/// `standing` is the work that the report was understood in. May hold words as the person wrote
/// them.
std::string consequence_words(const Consequence& consequence, const WorkAtHand& standing);

}  // namespace tackfree
