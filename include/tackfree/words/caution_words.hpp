// Caution words: a plan's cautions with its own figures and remedies woven into their texts.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <vector>

namespace tackfree {

/// As they are read, in the order of the plan.
std::vector<Caution> caution_texts(const Plan& plan);

}  // namespace tackfree
