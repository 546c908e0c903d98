#include "tackfree/words/work_entries.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/respirator_words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// `; only in a booth, on supplied air`; empty without a condition.
std::string on_condition(std::string_view condition) {
  return condition.empty() ? "" : fmt::format("; {}", condition);
}

/// Who does it, where there are several people.
std::string who_words(const Plan& plan, const std::optional<std::size_t>& who) {
  return who ? fmt::format("{}: ", cut_to(longest_name, plan.job.people.at(*who).name)) : "";
}

void add_tools(const Plan& plan, const WorkTask& tools, std::vector<WorkEntry>& all) {
  if (tools.coating_session)
    all.push_back({tools.time, who_words(plan, tools.who) + tools_words(plan, tools)});
}

void add_step(const Plan& plan, const StepWords& words, const DatedStep& step,
              std::vector<WorkEntry>& all) {
  if (plan.list.operations.at(step.operation).done) return;
  for (std::size_t i = 0; i < step.pieces.size(); ++i) {
    const auto who = i < step.by.size() ? std::optional(step.by[i]) : std::nullopt;
    all.push_back(
        {step.pieces[i], who_words(plan, who) + step_title(plan, words, step, i), &step, i == 0});
  }
}

}  // namespace

std::string_view words_for(KindOfWork kind) {
  if (const auto* operation = std::get_if<OperationKind>(&kind)) return word_for(*operation);
  return std::get<SessionWork>(kind) == SessionWork::set_up ? "set up" : "clean up";
}

std::string tools_words(const Plan& plan, const WorkTask& tools) {
  const Session& session = plan.schedule.sessions.at(tools.coating_session.value());
  const Coating& coating = plan.job.coatings.at(session.coating);
  const auto& method = plan.job.data.methods.at(session.method);
  const bool sets_up = tools.kind == KindOfWork(SessionWork::set_up);
  const bool between = !sets_up && tools.time.begin < session.clean_up.begin;
  return fmt::format("{}: {}, {}{}",
                     between ? "clean the tool before the next coat" : words_for(tools.kind),
                     cut_to(longest_name, coating.name), method.title,
                     sets_up ? on_condition(spraying_condition(coating, method)) : "");
}

std::string coat_conditions(const Plan& plan, const StepWords& words, const DatedStep& coat) {
  const std::string air = words.figures().temperature(plan.air.at(coat.begin()).temperature).text();
  const Operation& op = plan.list.operations.at(coat.operation);
  return fmt::format(
      ", {}{}{}", held_together("at " + air),
      op.portions > 1 ? fmt::format(", in {} portions, each wiped off before the next", op.portions)
                      : "",
      on_condition(words.condition(op)));
}

std::string step_title(const Plan& plan, const StepWords& words, const DatedStep& step,
                       std::optional<std::size_t> piece) {
  const Operation& op = plan.list.operations.at(step.operation);
  std::string title = words.full_title(op);
  if (op.kind == OperationKind::coat) title += coat_conditions(plan, words, step);
  if (piece && step.pieces.size() > 1)
    title += fmt::format(" ({} of {})", *piece + 1, step.pieces.size());
  return title;
}

std::vector<WorkEntry> work_entries(const Plan& plan, const StepWords& words) {
  std::vector<WorkEntry> all;
  for (const WorkTask& tools : tool_tasks(plan.schedule)) add_tools(plan, tools, all);
  for (const DatedStep& step : plan.schedule.steps) add_step(plan, words, step, all);
  std::erase_if(all, [](const WorkEntry& each) { return each.time.length() <= Minutes(0); });
  std::ranges::stable_sort(all, {}, &WorkEntry::time);
  return all;
}

}  // namespace tackfree
