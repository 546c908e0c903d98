// Planning words: what is being worked out, for the line of a slow command.
#pragma once

#include "tackfree/plan/make_plan.hpp"

#include <string>

namespace tackfree {

/// `dating the steps`, in plain ASCII.
std::string planning_words(const PlanningNow& now);

}  // namespace tackfree
