#include "tackfree/words/how_lines.hpp"

#include "tackfree/fumes/respirator.hpp"
#include "tackfree/words/figures.hpp"
#include "tackfree/words/tool_rest_words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// What must be seen to before dust is made, or before a coat with isocyanates, mixed or in the
/// air.
std::vector<std::string> before(const Job& job, const Operation& op) {
  const auto lines = [&](std::string_view key) {
    const auto text = std::ranges::find(job.data.texts.how, key, &Advice::key);
    return text == job.data.texts.how.end() ? std::vector<std::string>() : text->lines;
  };
  if (op.grit) return lines("before_sanding");
  if (op.kind != OperationKind::coat || !op.coating || !op.method) return {};
  const Coating& coating = job.coatings.at(*op.coating);
  if (std::ranges::count(coating.words.cautions, "isocyanates") == 0) return {};
  return lines(sprays_isocyanates(coating, job.data.methods.at(*op.method))
                   ? "before_isocyanates_sprayed"
                   : "before_isocyanates");
}

}  // namespace

std::vector<std::string> how_lines(const Plan& plan, const Operation& op) {
  std::vector<std::string> lines = before(plan.job, op);
  lines.insert(lines.end(), op.how.begin(), op.how.end());
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
