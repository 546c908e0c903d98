// Caution words: a plan's cautions with its own figures and remedies woven into their texts.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// As they are read, in the order of the plan.
std::vector<Caution> caution_texts(const Plan& plan);

/// What to do with oily rags, in the one sentence that every place has; empty where no text says.
std::string rags_remedy(const Plan& plan);

}  // namespace tackfree
