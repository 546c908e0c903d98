// Consequence words: what comes of work as it was reported, a sentence or two.
#pragma once

#include "tackfree/evening/log_entry.hpp"

#include <string>

namespace tackfree {

/// `standing` is the work that the report was understood in. May hold words as the person wrote
/// them.
std::string consequence_words(const Consequence& consequence, const WorkAtHand& standing);

}  // namespace tackfree
