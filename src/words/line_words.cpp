#include "tackfree/words/line_words.hpp"

#include "tackfree/plan/recoat_slack.hpp"

#include <fmt/format.h>

namespace tackfree {

std::string why_words(const WorkLine& line, const Plan& plan, const StepWords& words,
                      Reasons reasons) {
  if (line.steps.empty()) return "";
  const bool coat =
      plan.list.operations.at(line.steps.back()->operation).kind == OperationKind::coat;
  const std::string why = words.why(coat ? *line.steps.back() : *line.steps.front(), reasons);
  return why.empty() ? words.why(*line.steps.front(), reasons) : why;
}

std::vector<std::string> put_on_by_words(const WorkLine& line, const Plan& plan,
                                         const Figures& figures) {
  std::vector<std::string> all;
  for (const RecoatSlack& slack : recoat_slacks(plan))
    for (const DatedStep* step : line.steps)
      if (&plan.schedule.steps.at(slack.dated_step) == step)
        all.push_back(fmt::format(
            "Put it on by {}: then the coat below needs sanding first ({} to spare).",
            figures.moment(slack.until), wait_text(to_duration(slack.until - step->begin()))));
  return all;
}

}  // namespace tackfree
