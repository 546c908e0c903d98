// Plan part: the word that --only takes, and what is wrong with any other.
#pragma once

#include "tackfree/text/plan_text.hpp"

#include <optional>
#include <string>

namespace tackfree {

/// Nothing where no part of a plan is called so.
std::optional<PlanPart> plan_part_of(const std::string& word);

/// Names the right words; empty where it is one.
std::string plan_part_fault(const std::string& word);

}  // namespace tackfree
