#include "tackfree/shopping/tool_use.hpp"

#include <algorithm>

namespace tackfree {

std::vector<ToolUse> tool_uses(const OperationList& list, const Schedule& schedule) {
  std::vector<ToolUse> uses;
  const auto count_session = [&uses](std::size_t coating, std::size_t method) {
    const auto known = std::ranges::find_if(
        uses, [&](const ToolUse& use) { return use.coating == coating && use.method == method; });
    if (known != uses.end())
      ++known->sessions;
    else
      uses.push_back({.coating = coating, .method = method, .sessions = 1});
  };
  for (const Session& session : schedule.sessions) count_session(session.coating, session.method);
  for (const ToolRest& rest : schedule.tool_rests) {
    const Operation& coat = list.operations.at(schedule.steps.at(rest.dated_step).operation);
    for (ToolUse& use : uses)
      if (use.coating == coat.coating && use.method == coat.method)
        ++(rest.wrapped ? use.wrappings : use.cleanings);
  }
  for (const Unplaced& unplaced : schedule.unplaced) {
    const Operation& operation = list.operations.at(unplaced.operation);
    if (operation.coating && operation.method) count_session(*operation.coating, *operation.method);
  }
  return uses;
}

int sessions_with(const std::vector<ToolUse>& uses, std::size_t coating) {
  int sessions = 0;
  for (const ToolUse& use : uses)
    if (use.coating == coating) sessions += use.sessions;
  return sessions;
}

int cleanings_with(const std::vector<ToolUse>& uses, std::size_t coating) {
  int cleanings = sessions_with(uses, coating);
  for (const ToolUse& use : uses)
    if (use.coating == coating) cleanings += use.cleanings;
  return cleanings;
}

}  // namespace tackfree
