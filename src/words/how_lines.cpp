#include "tackfree/words/how_lines.hpp"

#include "tackfree/words/tool_rest_words.hpp"

namespace tackfree {

std::vector<std::string> how_lines(const Plan& plan, const Operation& op) {
  std::vector<std::string> lines = op.how;
  for (const ToolRest& rest : plan.schedule.tool_rests)
    if (&plan.list.operations.at(plan.schedule.steps.at(rest.step).operation) == &op)
      lines.push_back(tool_rest_words(rest));
  return lines;
}

}  // namespace tackfree
