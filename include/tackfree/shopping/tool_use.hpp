// Tool use: how often each tool is taken up with each coating, one session at a time.
#pragma once

#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <vector>

namespace tackfree {

/// The sessions of one coating with one tool.
struct ToolUse {
  std::size_t coating = 0;  ///< index into Job::coatings
  std::size_t method = 0;   ///< index into Job::data.methods
  int sessions = 0;
  int cleanings = 0;  ///< in pauses between two coats of a session
  int wrappings = 0;  ///< likewise
};

/// In the order of first use. A coat that found no time counts as a session of its own.
std::vector<ToolUse> tool_uses(const OperationList& list, const Schedule& schedule);

/// Sessions of one coating, with whatever tool.
int sessions_with(const std::vector<ToolUse>& uses, std::size_t coating);

/// Cleanings of its tools: at the end of each session, and in pauses.
int cleanings_with(const std::vector<ToolUse>& uses, std::size_t coating);

}  // namespace tackfree
