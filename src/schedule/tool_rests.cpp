#include "tackfree/schedule/tool_rests.hpp"

#include <algorithm>

namespace tackfree {

namespace {

constexpr Minutes lies_open{30};           // assumed
constexpr Minutes keeps_wrapped{12 * 60};  // assumed

Tool tool_of(const Method& method) {
  if (method.sprayed) return Tool::gun;
  if (method.key == "wipe") return Tool::cloth;
  return method.applicator_each_session ? Tool::roller : Tool::brush;
}

/// A cloth with oil on it heats itself where it is shut in; what hardens in its pot hardens there.
bool may_be_wrapped(const Coating& coating, Tool tool) {
  return !coating.pot_life && tool != Tool::gun && tool != Tool::cloth;
}

}  // namespace

Minutes longest_uncleaned(const Coating& coating, const Method& method) {
  return may_be_wrapped(coating, tool_of(method)) ? keeps_wrapped : lies_open;
}

std::vector<ToolRest> tool_rests(const Job& job, const OperationList& list,
                                 const Schedule& schedule) {
  std::vector<ToolRest> rests;
  for (const Session& session : schedule.sessions) {
    const Coating& coating = job.coatings.at(session.coating);
    for (std::size_t i = 1; i < session.steps.size(); ++i) {
      const DatedStep& before = schedule.steps[session.steps[i - 1]];
      const Interval pause{before.dries_from.value_or(before.end()),
                           schedule.steps[session.steps[i]].begin()};
      if (pause.length() <= lies_open) continue;
      const Method& method = job.data.methods.at(list.operations[before.operation].method.value());
      ToolRest rest{.dated_step = session.steps[i - 1], .pause = pause, .tool = tool_of(method)};
      rest.wrapped = pause.length() <= longest_uncleaned(coating, method);
      const Minutes cleaning = whole_minutes_up(coating.clean_up.value);
      rest.cleaning = {pause.begin, pause.begin + (rest.wrapped ? Minutes(0) : cleaning)};
      rests.push_back(rest);
    }
  }
  return rests;
}

bool takes_up_clean_tool(const OperationList& list, const Schedule& schedule,
                         const Operation& coat) {
  for (const Session& session : schedule.sessions)
    for (std::size_t i = 0; i < session.steps.size(); ++i) {
      if (&list.operations.at(schedule.steps.at(session.steps[i]).operation) != &coat) continue;
      return i == 0 || std::ranges::any_of(schedule.tool_rests, [&](const ToolRest& rest) {
               return !rest.wrapped && rest.dated_step == session.steps[i - 1];
             });
    }
  return false;
}

}  // namespace tackfree
