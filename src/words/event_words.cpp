#include "tackfree/words/event_words.hpp"

#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/caution_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/how_lines.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string_view first_sentence(std::string_view text) {
  const std::size_t end = text.find(". ");
  return end == std::string_view::npos ? text : text.substr(0, end + 1);
}

std::vector<std::string> description(const Plan& plan, const StepWords& words,
                                     const DatedStep& step) {
  const Operation& op = plan.list.operations.at(step.operation);
  std::vector<std::string> lines;
  if (const std::string pour = words.pour(op); !pour.empty()) lines.push_back("Pour " + pour);
  for (std::string& how : how_lines(plan, op)) lines.push_back(std::move(how));
  if (const std::string why = words.why(step); !why.empty()) lines.push_back("Why now: " + why);
  if (step.on_typical_air) lines.emplace_back("Rests on typical air: the hour may move.");
  if (op.kind != OperationKind::coat) return lines;
  for (const Caution& caution : caution_texts(plan))
    lines.push_back(fmt::format("{}: {}", caution.word, first_sentence(caution.hazard)));
  lines.push_back(plan.job.data.texts.deference);
  return lines;
}

EventWords step_event(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  const DatedStep& step = plan.schedule.steps.at(event.index);
  EventWords said{words.full_title(plan.list.operations.at(step.operation)),
                  description(plan, words, step)};
  if (step.pieces.size() > 1)
    said.summary += fmt::format(" ({} of {})", event.part + 1, step.pieces.size());
  return said;
}

/// What stands with an airing of a habit that is too little for its coats.
std::string too_little_note(const Plan& plan) {
  const auto better = better_habit(plan);
  return fmt::format("This airing is too little for these vapours by this estimate{}: {}.",
                     uncounted_clause(*plan.room),
                     better
                         ? fmt::format("better {}, and no shorter than here", words_for(*better))
                         : "nothing else that was tried serves. Coat less at a time, or outdoors");
}

EventWords airing_event(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  const StretchJudgement& stretch = plan.room->stretches.at(event.index);
  const Operation& first =
      plan.list.operations.at(plan.schedule.steps.at(stretch.steps.front()).operation);
  const AiringSpan& span = stretch.airing.at(event.part);
  EventWords said{
      fmt::format("Airing: {} {} to {}", words_for(span.opening),
                  words.figures().clock(span.time.begin), words.figures().clock(span.time.end)),
      {fmt::format("For {}.", words.full_title(first))}};
  if (stretch.too_little) {
    said.summary += ", too little: see the note";
    said.lines.push_back(too_little_note(plan));
  }
  if (stretch.under_limit_at)
    said.lines.push_back(fmt::format("By this estimate below the 8-hour limits{} from {}.",
                                     uncounted_clause(*plan.room),
                                     words.figures().moment(*stretch.under_limit_at)));
  said.lines.push_back(plan.job.data.texts.deference);
  return said;
}

/// When the work after a coat may go on, as far as drying goes.
EventWords wait_end_event(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  const DryingCourse& drying = plan.course.drying.at(event.index);
  const Operation& coat =
      plan.list.operations.at(plan.schedule.steps.at(drying.dated_step).operation);
  return {fmt::format("{}: {}", words.full_title(coat), reached_words(drying.towards)),
          {fmt::format("It went on {}.", words.figures().moment(drying.time.begin)),
           "By this estimate. Try it where it does not show before you go on."}};
}

EventWords milestone_event(const Plan& plan, const CalendarEvent& event) {
  const DatedOutcome& outcome = plan.schedule.outcomes.at(event.index);
  const std::string& batch = plan.job.batches.at(outcome.batch).name;
  return {fmt::format("{}: {}", cut_to(longest_summary / 2, batch), reached_words(outcome.stage)),
          {}};
}

EventWords uncut_words(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  switch (event.what) {
    case CalendarEvent::What::step:
      return step_event(plan, words, event);
    case CalendarEvent::What::airing:
      return airing_event(plan, words, event);
    case CalendarEvent::What::wait_end:
      return wait_end_event(plan, words, event);
    case CalendarEvent::What::milestone:
      break;
  }
  return milestone_event(plan, event);
}

}  // namespace

EventWords event_words(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  EventWords said = uncut_words(plan, words, event);
  said.summary = cut_to(longest_summary, said.summary);
  return said;
}

}  // namespace tackfree
