#include "tackfree/words/session_notes.hpp"

#include "tackfree/plan/calendar_events.hpp"
#include "tackfree/plan/pot_end.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/safety_lines.hpp"
#include "tackfree/words/session_words.hpp"
#include "tackfree/words/tool_rest_words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

class SessionNotes {
 public:
  SessionNotes(const Plan& plan, const StepWords& words, const WorkSession& session)
      : plan_(plan), words_(words), session_(session) {}

  std::vector<std::string> lines() {
    std::vector<std::size_t> steps;
    for (const WorkTask& task : session_.tasks)
      for (const std::size_t step : task.steps)
        if (!operation(step).done) steps.push_back(step);
    lines_ = safety_lines(plan_, steps);
    for (const WorkTask& task : session_.tasks) add(task);
    for (const DryCoat& dry : dry_coats(plan_, session_))
      lines_.push_back(capitalised(dry_words(plan_, words_, dry, session_.time.begin)) + ".");
    const bool wet = std::ranges::any_of(steps, [&](std::size_t step) { return is_wet(step); });
    add_airing(wet);
    if (std::ranges::any_of(
            steps, [&](std::size_t step) { return plan_.schedule.steps.at(step).on_typical_air; }))
      lines_.emplace_back("Rests on typical air: the hours may move.");
    if (wet) lines_.push_back(plan_.job.data.texts.deference);
    return std::move(lines_);
  }

 private:
  const Operation& operation(std::size_t step) const {
    return plan_.list.operations.at(plan_.schedule.steps.at(step).operation);
  }
  bool is_wet(std::size_t step) const {
    const OperationKind kind = operation(step).kind;
    return kind == OperationKind::coat || kind == OperationKind::wipe_off;
  }

  void add(const WorkTask& task) {
    const std::string who = session_.people.size() > 1 && task.who
                                ? cut_to(longest_name, plan_.job.people.at(*task.who).name) + ": "
                                : "";
    const bool done = !task.is_of_tools() && operation(task.steps.back()).done;
    std::string line = fmt::format("{} {}{} ({})", words_.figures().clock(task.time.begin), who,
                                   task_words(plan_, words_, task),
                                   done ? "done" : duration_text(to_duration(task.work)));
    if (!done && task.kind == KindOfWork(OperationKind::coat)) line += coat_words(task);
    lines_.push_back(std::move(line));
  }

  /// What a coat needs to be said beside it; begins with a sign.
  std::string coat_words(const WorkTask& task) const {
    const DatedStep& step = plan_.schedule.steps.at(task.steps.back());
    const Operation& coat = operation(task.steps.back());
    std::string text;
    if (const std::string pour = words_.pour(coat); !pour.empty()) text += ". Pour " + pour + ".";
    if (const auto hardens = pot_end(plan_, step.operation, step.begin()))
      text += fmt::format(
          " {} good until {}.",
          coat.pots > 1 ? fmt::format("{} pots, mixed one after another: the first is", coat.pots)
                        : "The pot is",
          words_.figures().clock(*hardens));
    if (coat.portions > 1)
      text += fmt::format(" In {} portions: put one on, leave it, wipe it off, then the next.",
                          coat.portions);
    for (const ToolRest& rest : plan_.schedule.tool_rests)
      if (rest.dated_step == task.steps.back() && rest.cleaning.length() <= Minutes(0))
        text += " " + tool_rest_words(rest);
    return text;
  }

  void add_airing(bool wet) {
    const auto airings = advised_airing(plan_);
    for (const std::size_t index : airings_in(airings, session_)) {
      const Interval time{airings[index].front().time.begin, airings[index].back().time.end};
      const std::string advice =
          wet ? advice_within(time) : airing_words(airings[index], plan_.now, words_.figures());
      if (!advice.empty()) lines_.push_back(fmt::format("Airing: {}.", advice));
      if (wet && is_at_night(time.end, plan_.job.calendar.zone))
        lines_.push_back(fmt::format("Close up at {}: no alarm rings for it at night.",
                                     words_.figures().moment(time.end)));
    }
  }

  std::string advice_within(const Interval& time) const {
    const auto within = [&](std::vector<AiringSpan> spans) {
      std::erase_if(spans, [&](const AiringSpan& span) {
        return span.time.end <= time.begin || time.end <= span.time.begin;
      });
      return spans;
    };
    const auto better = better_habit(plan_);
    return airing_advice(plan_, within(airing_of(plan_)),
                         better ? within(airing_of(plan_, *better)) : std::vector<AiringSpan>(),
                         words_.figures());
  }

  const Plan& plan_;
  const StepWords& words_;
  const WorkSession& session_;
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> session_notes(const Plan& plan, const StepWords& words,
                                       const WorkSession& session) {
  return SessionNotes(plan, words, session).lines();
}

}  // namespace tackfree
