#include "tackfree/words/event_words.hpp"

#include "tackfree/plan/advised_airing.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/safety_lines.hpp"
#include "tackfree/words/session_notes.hpp"
#include "tackfree/words/session_words.hpp"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

namespace tackfree {

namespace {

EventWords session_event(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  return {session_title(plan, words, event.work, longest_summary),
          session_notes(plan, words, event.work)};
}

const Operation& operation_of(const Plan& plan, std::size_t step) {
  return plan.list.operations.at(plan.schedule.steps.at(step).operation);
}

/// When the last of the coat before this wiping off must be off again.
std::optional<Instant> off_by(const Plan& plan, std::size_t wiping) {
  if (wiping == 0) return std::nullopt;
  const Operation& coat = plan.list.operations.at(wiping - 1);
  const auto step = std::ranges::find(plan.schedule.steps, wiping - 1, &DatedStep::operation);
  if (!coat.coating || step == plan.schedule.steps.end()) return std::nullopt;
  const auto& within = plan.job.coatings.at(*coat.coating).wipe_off_within;
  return within ? std::optional(step->end() + whole_minutes_up(within->value)) : std::nullopt;
}

EventWords wipe_off_event(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  const Operation& work = operation_of(plan, event.index);
  EventWords said{fmt::format("Wipe off {} now: {}", words.coat_name(work),
                              cut_inside(longest_name, plan.job.batches.at(work.batch).name)),
                  safety_lines(plan, {event.index})};
  if (const auto by = off_by(plan, plan.schedule.steps.at(event.index).operation))
    said.lines.push_back(fmt::format("All of it off by {}.", words.figures().clock(*by)));
  said.lines.push_back(plan.job.data.texts.deference);
  return said;
}

EventWords pot_end_event(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  const DatedStep& step = plan.schedule.steps.at(event.index);
  const Operation& coat = operation_of(plan, event.index);
  EventWords said{fmt::format("Pot life over: {}, {}", words.coat_name(coat),
                              cut_inside(longest_name, plan.job.batches.at(coat.batch).name)),
                  {}};
  said.lines.push_back(fmt::format(
      "It was mixed at {}. Put none of it on any more: clean the tools, and mix anew if you "
      "need more.",
      words.figures().clock(step.begin())));
  said.lines.push_back(plan.job.data.texts.deference);
  return said;
}

EventWords close_up_event(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  const std::vector<AiringSpan> airing = advised_airing(plan).at(event.index);
  const bool fan = std::ranges::any_of(
      airing, [](const AiringSpan& span) { return span.opening == Opening::open_and_fan; });
  EventWords said{
      people_words(plan, event.work) +
          (fan ? "Turn off the fan, close up: the airing is over" : "Close up: the airing is over"),
      {"If it still smells, leave it open."}};
  said.lines.push_back(fmt::format("The room was to be aired since {}.",
                                   words.figures().moment(airing.front().time.begin)));
  if (needs_more_air(plan, airing) && !better_habit(plan))
    said.lines.emplace_back(
        "This airing is too little for these vapours by this estimate: coat less at a time, or "
        "outdoors.");
  said.lines.push_back(plan.job.data.texts.deference);
  return said;
}

EventWords outcome_event(const Plan& plan, const CalendarEvent& event) {
  const DatedOutcome& outcome = plan.schedule.outcomes.at(event.index);
  const std::string batch =
      cut_inside(longest_summary / 2, plan.job.batches.at(outcome.batch).name);
  if (event.what == CalendarEvent::What::cured)
    return {fmt::format("Fully cured: {}", batch),
            {"By this estimate. Now it may be washed, and things may be left standing on it."}};
  return {fmt::format("Ready for light use: {}", batch),
          {"By this estimate. Nothing wet, hot or heavy before it is fully cured."}};
}

EventWords uncut_words(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  switch (event.what) {
    case CalendarEvent::What::session:
      return session_event(plan, words, event);
    case CalendarEvent::What::wipe_off:
      return wipe_off_event(plan, words, event);
    case CalendarEvent::What::pot_end:
      return pot_end_event(plan, words, event);
    case CalendarEvent::What::close_up:
      return close_up_event(plan, words, event);
    case CalendarEvent::What::ready:
    case CalendarEvent::What::cured:
      break;
  }
  return outcome_event(plan, event);
}

}  // namespace

EventWords event_words(const Plan& plan, const StepWords& words, const CalendarEvent& event) {
  EventWords said = uncut_words(plan, words, event);
  if (event.what != CalendarEvent::What::session)
    said.summary = people_words(plan, event.work) + said.summary;
  said.summary = cut_to(longest_summary, said.summary);
  return said;
}

}  // namespace tackfree
