#include "tackfree/words/how_lines.hpp"

#include "tackfree/words/figures.hpp"
#include "tackfree/words/tool_rest_words.hpp"

#include <fmt/format.h>

namespace tackfree {

std::vector<std::string> how_lines(const Plan& plan, const Operation& op) {
  std::vector<std::string> lines = op.how;
  if (op.pots > 1)
    lines.push_back(
        fmt::format("Mix {} pots, one after the other: in the warmest air of this plan each is "
                    "good for {} only.",
                    op.pots, duration_text(op.pot_life)));
  if (op.portions > 1)
    lines.push_back(
        fmt::format("In {} portions of {}: put one on, leave it, wipe it off, then the next.",
                    op.portions, Figures(plan.job).area(op.area / op.portions).text()));
  for (const ToolRest& rest : plan.schedule.tool_rests)
    if (&plan.list.operations.at(plan.schedule.steps.at(rest.dated_step).operation) == &op)
      lines.push_back(tool_rest_words(rest));
  return lines;
}

}  // namespace tackfree
