// Tool rest words: what to do with the tool before a pause, as the coat before it says it.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// `Wrap the brush airtight: its next coat is 2.0 h off, and it would dry.`
std::string tool_rest_words(const ToolRest& rest);

}  // namespace tackfree
